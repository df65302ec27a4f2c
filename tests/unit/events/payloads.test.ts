import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { EVENT_CATALOGUE, EVENT_TYPES, type EventType, eventSchema } from '@/lib/domain/events/catalogue';
import { inputErrors } from '@/lib/domain/input-errors';
import { ACCEPTED_EVENTS, BODY_SAMPLES, REFUSED_EVENTS } from '@/tests/support/event-samples';

/**
 * What each type's payload looked like when it was last looked at. The log keeps events for good: a new optional field
 * is fine, anything else makes old events unreadable. Change a hash only together with that thought.
 */
const STRUCTURES: Record<EventType | 'envelope', string> = {
  envelope: '6b38299f166f',
  'unit.started': '3e3178ba4df7',
  'unit.processed': '743470af9e7d',
  'unit.signed': '8b0cd67f7859',
  'unit.joined': 'd4fcd6b30aa3',
  'unit.separated': '7477df711089',
  'part.removed': 'ce3abb205161',
  'part.installed': '33147a0ca61e',
  'unit.scrapped': '719c2a747f55',
  'unit.packed': 'a37b6e9d2d3a',
  'unit.unpacked': 'a37b6e9d2d3a',
  'container.nested': '0fc3197a9688',
  'container.unnested': 'dae3580f9d56',
  'container.shipped': 'dba372ded17e',
  'unit.returned': '8f4cff345cd8',
  'hold.placed': '5c68caf92437',
  'hold.released': '15019040284a',
  'exception.cleared': '1fc09a275029',
  'item.received': '038287784b8c',
  'item.counted': 'a1c8cc518cb1',
  'item.mounted': '68e3d84d46b8',
  'item.unmounted': 'e1b73dd37be1',
  'item.spliced': 'a9895d879cbe',
  'item.inspected': '56bf7b382e65',
  'item.retired': 'dbcad2504d19',
  'device.retired': '06863934b371',
  'label.printed': '1ffd8e375e17',
  'event.voided': '1fc09a275029',
};

const WORDS = ['title', 'description'];

/** Hash of a schema's structure: what it takes, not what it is called. */
function structureOf(schema: z.ZodType): string {
  const json = JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), (key, value: unknown) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    const isNames = key === 'properties';
    const entries = Object.entries(value).filter(([name]) => isNames || !WORDS.includes(name));
    return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)));
  });
  return createHash('sha256').update(json).digest('hex').slice(0, 12);
}

describe('the structure of each payload', () => {
  it('is pinned for every type and for the envelope, and for nothing else', () => {
    expect(Object.keys(STRUCTURES).sort()).toEqual([...EVENT_TYPES, 'envelope'].sort());
  });

  for (const { type, schema } of EVENT_CATALOGUE)
    it(`is unchanged for ${type}`, () => {
      expect({ [type]: structureOf(schema.shape.body) }).toEqual({ [type]: STRUCTURES[type] });
    });

  it('is unchanged for the envelope', () => {
    const { body: _, type: __, ...envelope } = EVENT_CATALOGUE[0].schema.shape;
    expect(structureOf(z.strictObject(envelope))).toBe(STRUCTURES.envelope);
  });

  it('is seen when a field becomes required, changes its bounds or disappears', () => {
    const base = { unit: z.string().max(64), note: z.string().optional() };
    const hashes = [
      z.strictObject(base),
      z.strictObject({ ...base, note: z.string() }),
      z.strictObject({ ...base, unit: z.string().max(65) }),
      z.strictObject({ unit: base.unit }),
      z.object(base),
      z.strictObject({ ...base, title: z.string().optional() }),
    ].map(structureOf);
    expect(new Set(hashes).size).toBe(hashes.length);
    expect(structureOf(z.strictObject(base).meta({ title: 'T', description: 'D' }))).toBe(hashes[0]);
  });
});

describe('every declaration', () => {
  it('is listed once, with a title and one sentence', () => {
    expect(new Set(EVENT_TYPES).size).toBe(EVENT_CATALOGUE.length);
    expect(eventSchema.options.length).toBe(EVENT_CATALOGUE.length);
    for (const { type, title, summary } of EVENT_CATALOGUE) {
      expect(type).toMatch(/^[a-z]+\.[a-z]+$/);
      expect(title).not.toBe('');
      expect(summary).toMatch(/^[A-Z].*\.$/);
    }
  });
});

describe('samples', () => {
  it('are there for every type', () => {
    expect(Object.keys(BODY_SAMPLES).sort()).toEqual([...EVENT_TYPES].sort());
    expect(ACCEPTED_EVENTS.length).toBeGreaterThan(2 * EVENT_TYPES.length);
  });

  it('are accepted and come out as they went in, but for the letters of their ids', () => {
    for (const sample of ACCEPTED_EVENTS)
      expect(eventSchema.parse(sample)).toEqual({ ...sample, id: String(sample.id).toLowerCase() });
  });

  for (const { title, event, pointer } of [...REFUSED_EVENTS.byShapeAlone, ...REFUSED_EVENTS.byMeaning])
    it(`are refused with a pointer: ${title}`, () => {
      const parsed = eventSchema.safeParse(event);
      expect(parsed.success).toBe(false);
      if (!parsed.success) expect(inputErrors(parsed.error).map((each) => each.pointer)).toContain(pointer);
    });
});
