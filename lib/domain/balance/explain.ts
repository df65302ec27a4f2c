import { type Change, changesOf } from '@/lib/domain/balance/changes';
import type { Balance, Ledger, Range, ReelStay } from '@/lib/domain/balance/ledger';

/**
 * A part of a stay during which units are recorded on its reel that may really have drawn from another one: the last
 * passes of it (the other reel was scanned too late), the first ones (it was scanned too early), or all of it (the
 * other reel was never scanned, or nobody knows which it was).
 */
export type Suspicion = {
  stay: ReelStay;
  part: 'last' | 'first' | 'whole';
  /** The other reel; null when no record points to one. */
  other: string | null;
  /** Most pieces that may have come from the other reel. */
  piecesMax: number;
  /** Times beyond which it does not reach, in microseconds. */
  between: Range;
  /** The weighed periods that speak for it. */
  balances: Balance[];
};

/** A period whose counts disagree with the use, and what may explain it; nothing is an unexplained loss. */
export type Finding = { balance: Balance; suspicions: Suspicion[] };

/**
 * Finds, for every reel that disagrees, where a change was probably not scanned. The evidence is taken in this order,
 * until it can carry the whole disagreement:
 * 1. the reel before or after it in the slot disagrees the other way;
 * 2. another reel of the part disagrees the other way, by a size that fits, and its own neighbours do not explain it;
 *    a neighbour that is not weighed stays a suspect beside it;
 * 3. a neighbour that is not weighed, or whose allowance can hide it.
 * A surplus that nothing carries came from an unknown reel, at any time of its stays; such a deficit is a loss.
 */
export function explain(ledger: Ledger): Finding[] {
  const neighbourly = changesOf(ledger).flatMap(acrossChange);
  const isCarried = (balance: Balance, suspicions: readonly Suspicion[]) =>
    suspicions.reduce((sum, { piecesMax }) => sum + piecesMax, 0) >= leastMoved(balance);
  const proven = (balance: Balance) =>
    neighbourly.filter(
      ({ balances }) => balances.includes(balance) && balances.some((other) => areOpposite(balance, other)),
    );
  const open = ledger.balances.filter(
    (balance) => balance.verdict !== 'agrees' && !isCarried(balance, proven(balance)),
  );
  const distant = open
    .filter(({ verdict }) => verdict === 'surplus')
    .flatMap((surplus) => open.flatMap((deficit) => neverScanned(ledger, surplus, deficit)));

  return ledger.balances.flatMap((balance) => {
    if (balance.verdict === 'agrees') return [];
    const first = proven(balance);
    if (isCarried(balance, first)) return [{ balance, suspicions: first }];
    const nearby = neighbourly.filter(
      (suspicion) => suspicion.balances.includes(balance) && speaksFor(suspicion, balance),
    );
    const far = distant.filter(({ balances }) => balances.includes(balance));
    if (far.length > 0) {
      const unweighed = nearby.filter(({ balances }) => balances.length === 1);
      return [{ balance, suspicions: [...first, ...far, ...unweighed] }];
    }
    if (isCarried(balance, nearby)) return [{ balance, suspicions: nearby }];
    if (balance.verdict === 'deficit') return [{ balance, suspicions: first }];
    return [{ balance, suspicions: [...nearby, ...fromUnknown(ledger, balance)] }];
  });
}

/** Pieces that must have moved, whatever was lost. */
function leastMoved({ verdict, moved }: Balance): number {
  return verdict === 'surplus' ? moved.min : -moved.max;
}

function areOpposite(a: Balance, b: Balance): boolean {
  return a.verdict !== 'agrees' && b.verdict !== 'agrees' && a.verdict !== b.verdict;
}

/** What a change may hide: the next reel scanned too late, or too early. */
function acrossChange({ before, after, balanceBefore, balanceAfter }: Change): Suspicion[] {
  const late = {
    stay: before,
    part: 'last' as const,
    other: after.item,
    piecesMax: Math.min(givenMax(balanceBefore), takenMax(balanceAfter)),
    between: within(before, balanceBefore),
  };
  const early = {
    stay: after,
    part: 'first' as const,
    other: before.item,
    piecesMax: Math.min(givenMax(balanceAfter), takenMax(balanceBefore)),
    between: within(after, balanceAfter),
  };
  const balances = [balanceBefore, balanceAfter].filter((balance) => balance !== null);
  return [late, early].flatMap((suspicion) =>
    suspicion.piecesMax > 0 && suspicion.piecesMax < Number.POSITIVE_INFINITY
      ? [{ ...suspicion, balances }]
      : [],
  );
}

/** Most pieces recorded on a reel that another one can have given. */
function givenMax(balance: Balance | null): number {
  return balance === null ? Number.POSITIVE_INFINITY : Math.max(0, balance.moved.max);
}

/** Most pieces that a reel can have given to units recorded on another one. */
function takenMax(balance: Balance | null): number {
  return balance === null ? Number.POSITIVE_INFINITY : Math.max(0, -balance.moved.min);
}

/** Whether a suspicion makes a disagreement smaller: a surplus is on the stay's reel, a deficit on the other one. */
function speaksFor({ stay, other }: Suspicion, { item, verdict }: Balance): boolean {
  return (verdict === 'surplus' ? stay.item : other) === item;
}

/** The stays of a surplus while a reel that was missing pieces elsewhere may have stood there without a scan. */
function neverScanned({ stays }: Ledger, surplus: Balance, deficit: Balance): Suspicion[] {
  if (surplus.part === null || surplus.part !== deficit.part || surplus.item === deficit.item) return [];
  const isOfASize = surplus.moved.max >= -deficit.moved.max && -deficit.moved.min >= surplus.moved.min;
  if (deficit.verdict !== 'deficit' || !isOfASize) return [];
  return staysDuring(stays, surplus).flatMap((stay) => {
    const between = meet(within(stay, surplus), {
      min: deficit.from.lowUs,
      max: deficit.to?.highUs ?? Number.POSITIVE_INFINITY,
    });
    if (between.min > between.max) return [];
    const piecesMax = Math.min(givenMax(surplus), takenMax(deficit));
    return [{ stay, part: 'whole', other: deficit.item, piecesMax, between, balances: [surplus, deficit] }];
  });
}

function fromUnknown({ stays }: Ledger, surplus: Balance): Suspicion[] {
  return staysDuring(stays, surplus).map((stay) => ({
    stay,
    part: 'whole',
    other: null,
    piecesMax: givenMax(surplus),
    between: within(stay, surplus),
    balances: [surplus],
  }));
}

function staysDuring(stays: readonly ReelStay[], { item, from, to }: Balance): ReelStay[] {
  const endUs = to?.atUs ?? Number.POSITIVE_INFINITY;
  return stays.filter((stay) => stay.item === item && stay.fromUs < endUs && from.atUs < stay.toUs);
}

function within(stay: ReelStay, balance: Balance | null): Range {
  const own = { min: stay.fromUs, max: stay.toUs };
  return balance === null
    ? own
    : meet(own, { min: balance.from.lowUs, max: balance.to?.highUs ?? Number.POSITIVE_INFINITY });
}

function meet(a: Range, b: Range): Range {
  return { min: Math.max(a.min, b.min), max: Math.min(a.max, b.max) };
}
