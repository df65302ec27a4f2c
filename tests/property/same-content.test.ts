import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eventSchema, type WireEvent } from '@/lib/domain/events/catalogue';
import { isSameContent } from '@/lib/domain/events/logged-event';
import { ACCEPTED_EVENTS } from '@/tests/support/event-samples';

const event = fc.constantFrom(...ACCEPTED_EVENTS.map((sample) => eventSchema.parse(sample)));

/** The same JSON with the keys of every object in another order. */
function reorder(value: unknown, seed: number): unknown {
  if (Array.isArray(value)) return value.map((each) => reorder(each, seed));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, each]) => [key, reorder(each, seed)] as const);
  const turn = entries.length === 0 ? 0 : seed % entries.length;
  return Object.fromEntries([...entries.slice(turn), ...entries.slice(0, turn)].reverse());
}

/** Every place in an event where a value stands. */
function leavesOf(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, each]) => leavesOf(each, [...path, key]));
}

function replaced(value: unknown, [step, ...rest]: (string | number)[]): unknown {
  if (step === undefined) return typeof value === 'number' ? value + 1 : `${String(value)}x`;
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, each]) => [
    key,
    key === String(step) ? replaced(each, rest) : each,
  ]);
  const changed: unknown = Object.fromEntries(entries);
  return Array.isArray(value) ? Object.values(changed ?? {}) : changed;
}

describe('whether two events say the same', () => {
  it('does not depend on the order of keys at any depth', () => {
    fc.assert(
      fc.property(event, fc.nat({ max: 20 }), (original, seed) => {
        const same = eventSchema.parse(reorder(original, seed));
        expect(isSameContent(original, same)).toBe(true);
      }),
    );
  });

  it('does not depend on defaults being said', () => {
    fc.assert(
      fc.property(event, ({ gate: _, uncertaintyMs: __, ...rest }) => {
        const bare: WireEvent = rest;
        expect(isSameContent(bare, { ...bare, gate: 'enforce' })).toBe(true);
        expect(isSameContent(bare, { ...bare, uncertaintyMs: 0 })).toBe(true);
        expect(isSameContent(bare, { ...bare, gate: 'record' })).toBe(false);
      }),
    );
  });

  it('depends on every value there is', () => {
    fc.assert(
      fc.property(event, fc.nat(), (original, at) => {
        const leaves = leavesOf(original).filter(([first]) => first !== 'at' && first !== 'type');
        const leaf = leaves[at % leaves.length] ?? [];
        // What is compared need not be valid: an event of the log is, one that claims its id may be anything.
        const other = replaced(original, leaf) as WireEvent;
        const isDefault = leaf[0] === 'gate' && original.gate === undefined;
        expect(isSameContent(original, other), leaf.join('/')).toBe(isDefault);
      }),
      { numRuns: 1000 },
    );
  });

  it('compares times as instants', () => {
    fc.assert(
      fc.property(event, fc.integer({ min: -720, max: 720 }), (original, minutes) => {
        const wall = new Date(Date.parse(original.at) + minutes * 60_000).toISOString().slice(0, -1);
        const size = Math.abs(minutes);
        const two = (value: number) => String(value).padStart(2, '0');
        const zone = `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
        expect(isSameContent(original, { ...original, at: `${wall}${zone}` })).toBe(true);
        expect(isSameContent(original, { ...original, at: `${wall.slice(0, -1)}9${zone}` })).toBe(false);
      }),
    );
  });
});
