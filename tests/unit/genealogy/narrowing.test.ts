import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  combine,
  countConditions,
  NO,
  not,
  POSSIBLE,
  type Standing,
  type Truth,
  YES,
} from '@/lib/domain/genealogy/narrowing';

const TRUTHS = [NO, POSSIBLE, YES] as const;

// Kleene's strong logic of three values, from memory.
describe('three values', () => {
  test.each([
    [NO, YES],
    [POSSIBLE, POSSIBLE],
    [YES, NO],
  ] as const)('not %i is %i', (truth, expected) => expect(not(truth)).toBe(expected));

  test.each([
    [NO, NO, NO],
    [NO, POSSIBLE, NO],
    [NO, YES, NO],
    [POSSIBLE, NO, NO],
    [POSSIBLE, POSSIBLE, POSSIBLE],
    [POSSIBLE, YES, POSSIBLE],
    [YES, NO, NO],
    [YES, POSSIBLE, POSSIBLE],
    [YES, YES, YES],
  ] as const)('%i and %i is %i', (a, b, expected) => expect(combine([a, b])).toBe(expected));

  it('demands nothing of a unit that nothing is asked about', () => expect(combine([])).toBe(YES));
});

/** Every unit of a world where three things are each true, false or unknown; what is unknown may be either. */
const WORLDS = TRUTHS.flatMap((a) => TRUTHS.flatMap((b) => TRUTHS.map((c): Truth[] => [a, b, c])));

/** All completions of what is unknown, with the demands applied in two-valued logic. */
function outcomes(truths: readonly Truth[], musts: readonly boolean[]): Set<boolean> {
  const completions = truths.reduce<boolean[][]>(
    (rows, truth) =>
      rows.flatMap((row) =>
        (truth === POSSIBLE ? [true, false] : [truth === YES]).map((value) => [...row, value]),
      ),
    [[]],
  );
  return new Set(completions.map((row) => row.every((value, index) => value === musts[index])));
}

test('a unit is certain, possible or out exactly when all, some or none of what may be true meets the demands', () => {
  let looked = 0;
  for (const musts of [true, false].flatMap((a) =>
    [true, false].flatMap((b) => [true, false].map((c) => [a, b, c])),
  ))
    for (const world of WORLDS) {
      const verdict = combine(world.map((truth, index) => (musts[index] === true ? truth : not(truth))));
      const possible = outcomes(world, musts);
      expect(verdict).toBe(possible.size === 2 ? POSSIBLE : possible.has(true) ? YES : NO);
      looked += 1;
    }
  expect(looked).toBe(8 * 27);
});

const standingsOf = (count: number) =>
  fc.array(
    fc.record({
      truths: fc.array(fc.constantFrom<Truth>(...TRUTHS), { minLength: count, maxLength: count }),
      units: fc.integer({ min: 1, max: 50 }),
    }),
    { maxLength: 20 },
  );

const questions = fc.integer({ min: 1, max: 6 }).chain((count) =>
  fc.record({
    musts: fc.array(fc.boolean(), { minLength: count, maxLength: count }),
    standings: standingsOf(count),
    order: fc.shuffledSubarray([...Array(count).keys()], { minLength: count, maxLength: count }),
  }),
);

const total = ({ certain, possible }: { certain: number; possible: number }) => certain + possible;
const survivors = (standings: readonly Standing[]) =>
  standings.reduce((sum, { truths, units }) => sum + (combine(truths) === NO ? 0 : units), 0);

test('the last count is the answer, what is removed adds up, and no order of conditions changes the set', () => {
  fc.assert(
    fc.property(questions, ({ musts, standings, order }) => {
      const counts = countConditions(musts, standings);
      expect(counts).toHaveLength(musts.length);
      const last = counts.at(-1)?.after;
      expect(last == null).toBe(!musts.includes(true));
      if (last != null) expect(total(last)).toBe(survivors(standings));
      for (const [index, { after, removed }] of counts.entries()) {
        const before = counts[index - 1]?.after ?? null;
        expect(removed === null).toBe(before === null);
        if (before !== null && after !== null) expect(total(before) - total(after)).toBe(removed);
      }
      const shuffled = countConditions(
        order.map((index) => musts[index] === true),
        standings.map(({ truths, units }) => ({ truths: order.map((index) => truths[index] ?? NO), units })),
      );
      expect(shuffled.at(-1)?.after).toEqual(last);
      expect(order.map((index) => counts[index]?.own)).toEqual(shuffled.map(({ own }) => own));
    }),
  );
});

test('counts of a question about a reel, but not a repair', () => {
  const standings: Standing[] = [
    { truths: [YES, YES], units: 40 },
    { truths: [POSSIBLE, YES], units: 3 },
    { truths: [YES, NO], units: 5 },
    { truths: [YES, POSSIBLE], units: 2 },
    { truths: [NO, NO], units: 7 },
  ];
  expect(countConditions([true, false], standings)).toEqual([
    { own: { certain: 47, possible: 3 }, after: { certain: 47, possible: 3 }, removed: null, spared: 3 },
    { own: { certain: 12, possible: 2 }, after: { certain: 40, possible: 5 }, removed: 5, spared: 2 },
  ]);
});
