/** What the record says about a unit and a condition, as Kleene's numbers: "and" is the smallest, "not" is two less it. */
export const NO = 0;
export const POSSIBLE = 1;
export const YES = 2;
export type Truth = typeof NO | typeof POSSIBLE | typeof YES;

/** What the record proves is turned round; what it cannot exclude stays just as possible. */
export function not(truth: Truth): Truth {
  switch (truth) {
    case NO:
      return YES;
    case POSSIBLE:
      return POSSIBLE;
    case YES:
      return NO;
    default:
      return truth satisfies never;
  }
}

/**
 * A unit under several demands: certain when every one is certainly met, out only when one is certainly broken, and
 * possible otherwise. Their order cannot matter.
 */
export function combine(truths: readonly Truth[]): Truth {
  if (truths.includes(NO)) return NO;
  return truths.includes(POSSIBLE) ? POSSIBLE : YES;
}

/** Units that stand alike under every demand: `truths` holds one truth a demand, a must-not already turned round. */
export type Standing = { truths: readonly Truth[]; units: number };

export type GroupCounts = { certain: number; possible: number };

/** What one condition does in its sequence. */
export type ConditionCounts = {
  /** Units that certainly, or only possibly, meet what the condition says, whatever the others say. */
  own: GroupCounts;
  /** Units left by it and by all before it; null before the first must, since nothing was asked for yet. */
  after: GroupCounts | null;
  /** Units that were left before it and that it certainly rules out; null where there was nothing to remove from. */
  removed: number | null;
  /** Units about which the record cannot decide here, and which therefore stay. */
  spared: number;
};

/** Counts each condition of a question over the standings of every unit that any of them names. */
export function countConditions(
  musts: readonly boolean[],
  standings: readonly Standing[],
): ConditionCounts[] {
  return musts.map((must, index) => {
    const hasBefore = musts.slice(0, index).includes(true);
    const before = (standing: Standing) => combine(standing.truths.slice(0, index));
    const after = (standing: Standing) => combine(standing.truths.slice(0, index + 1));
    const here = (standing: Standing) => standing.truths[index] ?? NO;
    const count = (test: (standing: Standing) => boolean) =>
      standings.reduce((sum, standing) => sum + (test(standing) ? standing.units : 0), 0);
    return {
      own: {
        certain: count((standing) => here(standing) === (must ? YES : NO)),
        possible: count((standing) => here(standing) === POSSIBLE),
      },
      after:
        must || hasBefore
          ? {
              certain: count((standing) => after(standing) === YES),
              possible: count((standing) => after(standing) === POSSIBLE),
            }
          : null,
      removed: hasBefore ? count((standing) => before(standing) !== NO && here(standing) === NO) : null,
      spared: count((standing) => before(standing) !== NO && here(standing) === POSSIBLE),
    };
  });
}
