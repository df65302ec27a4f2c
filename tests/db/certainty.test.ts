import fc from 'fast-check';
import { expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { asBuilt } from '@/lib/server/as-built';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { eventMaker } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

freshDatabase();

const SEED = Number(process.env.REELKIN_SEED ?? 20_260_302);
const CASE_COUNT = 400;
const FROM_US = instantOf('2026-03-02T08:00:00Z');
const TO_US = FROM_US + 10_000_000;

/** A stay in a slot and a pass, with the doubts about each of their four times, in microseconds. */
type Case = {
  a: number;
  b: number;
  u: number;
  f: number;
  g: number;
  isEmptied: boolean;
};

const doubtMs = fc.constantFrom(0, 0, 1, 250, 3000, 6000, 40_000);
const nudge = fc.constantFrom(-1, 0, 1);

/** Times at the very edges of what the contract says, and one microsecond to either side. */
const cases: fc.Arbitrary<Case> = fc
  .record({ u: doubtMs, f: doubtMs, g: doubtMs, isEmptied: fc.constantFrom(true, true, false) })
  .chain(({ u, f, g, isEmptied }) => {
    const [doubt, begin, end] = [u * 1000, f * 1000, g * 1000];
    const edge = fc
      .tuple(
        fc.constantFrom(
          FROM_US,
          TO_US,
          FROM_US + doubt + begin,
          FROM_US - doubt - begin,
          TO_US - doubt - end,
          TO_US + doubt + end,
        ),
        nudge,
      )
      .map(([at, by]) => at + by);
    return fc.tuple(edge, fc.option(edge)).map(([one, two]) => ({
      a: Math.min(one, two ?? one),
      b: Math.max(one, two ?? one),
      u: doubt,
      f: begin,
      g: end,
      isEmptied,
    }));
  });

/** Wire contract, "Certainty", word for word. */
function certaintyOf({ a, b, u, f, g, isEmptied }: Case): string {
  const to = isEmptied ? TO_US : Number.POSITIVE_INFINITY;
  const end = isEmptied ? g : 0;
  if (a - u - f >= FROM_US && b + u + end < to) return 'certain';
  return b + u + f >= FROM_US && a - u - end < to ? 'possible' : 'none';
}

it(`certainty is what the contract says, at every edge; seed ${SEED}`, async () => {
  const drawn = fc.sample(cases, { numRuns: CASE_COUNT, seed: SEED });
  const say = eventMaker('2026-03-01T00:00:00Z');
  const name = (code: string, index: number) => `${code}-${index}`;
  await putPlant(
    {
      stations: drawn.map((_, index) => ({
        code: name('ST', index),
        operation: 'print',
        slots: [{ name: 'stencil', holds: 'stencil' }],
      })),
    },
    'test',
  );
  const at = (us: number, doubtUs = 0) => ({
    at: formatInstant(us),
    uncertaintyMs: doubtUs / 1000,
    gate: 'record' as const,
  });
  const events = drawn.flatMap(({ a, b, u, f, g, isEmptied }, index) => {
    const [station, item] = [name('ST', index), name('S', index)];
    const startedAt = formatInstant(a);
    return [
      say.passed(name('U', index), station, at(b, u), { startedAt }),
      say.mounted(item, station, 'stencil', at(FROM_US, f)),
      ...(isEmptied ? [say.unmounted(item, station, 'stencil', at(TO_US, g))] : []),
    ];
  });
  for (const result of await recordHistory(events, 1000)) expect(result.outcome).toBe('recorded');

  const seen = new Map<string, number>();
  for (const [index, each] of drawn.entries()) {
    const expected = certaintyOf(each);
    seen.set(expected, (seen.get(expected) ?? 0) + 1);
    const { units } = await whereUsed(whereUsedQuestionSchema.parse({ item: name('S', index) }));
    const answered = units.map(({ certainty }) => certainty);
    expect({ each, answered }).toEqual({ each, answered: expected === 'none' ? [] : [expected] });
    const record = await asBuilt(name('U', index), undefined);
    expect({ each, draws: record?.draws.map(({ certainty }) => certainty) }).toEqual({
      each,
      draws: answered,
    });
  }
  for (const kind of ['certain', 'possible', 'none']) expect(seen.get(kind) ?? 0).toBeGreaterThan(15);
});
