import type { Balance, Period, Range } from '@/lib/domain/balance/ledger';

// Shares of whole pieces in binary floating point: far below a piece, far above its error.
const ROUNDING = 1e-6;

type Use = { part: string | null; attrition: number; used: Range };

/**
 * Weighs what two counts say was taken from a reel against what the record says was used. Giving u pieces to units
 * empties a reel by u to u × (1 + attrition). The two disagree when no loss within the attrition explains the counts:
 * a deficit is less left than that; a surplus is more left than if nothing was lost, by more than the same allowance,
 * since a count is no surer than the tolerance that the plant states. Since its last count a reel can at most have
 * been emptied, and not even that once it was retired: a use beyond that is a surplus as well, and any other use says
 * nothing yet (null).
 */
export function weighPeriod(period: Period, use: Use): Balance | null {
  const { attrition, used } = use;
  const { from, to } = period;
  const taken = from.left - (to?.left ?? (from.isFinal ? from.left : 0));
  const moved = { min: used.min - taken, max: used.max - Math.max(0, taken) / (1 + attrition) };
  const verdict = verdictOf(use, taken);
  if (to === null && verdict !== 'surplus') return null;
  return { ...period, ...use, moved, verdict };
}

function verdictOf({ attrition, used }: Use, taken: number): Balance['verdict'] {
  // Where the pieces of some use are not known, `used.max` is infinite and nothing can be said.
  if (used.max === Number.POSITIVE_INFINITY) return 'agrees';
  if (taken > used.max * (1 + attrition) + ROUNDING) return 'deficit';
  if (used.min - taken > used.max * attrition + ROUNDING) return 'surplus';
  return 'agrees';
}

/** What must be left of a reel now, from the last count and the use since: no loss at best, all that is allowed at worst. */
export function expectedLeft(left: number, { attrition, used }: Omit<Use, 'part'>): Range {
  return { min: Math.max(0, left - used.max * (1 + attrition)), max: Math.max(0, left - used.min) };
}
