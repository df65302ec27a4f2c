import type { Balance, Ledger, ReelStay } from '@/lib/domain/balance/ledger';

/** One reel after another in the same slot, and how each of them is weighed at that change; null where it is not. */
export type Change = {
  before: ReelStay;
  after: ReelStay;
  balanceBefore: Balance | null;
  balanceAfter: Balance | null;
};

/** Every change from one reel to another, in the order of the stays. */
export function changesOf({ stays, balances }: Ledger): Change[] {
  const byItem = balancesByItem(balances);
  return stays.flatMap((after, index) => {
    const before = stays[index - 1];
    if (before === undefined || before.station !== after.station || before.slot !== after.slot) return [];
    if (before.item === after.item) return [];
    const balanceBefore = byItem
      .get(before.item)
      ?.find(({ from, to }) => from.atUs < before.toUs && before.toUs <= endOf(to));
    const balanceAfter = byItem
      .get(after.item)
      ?.find(({ from, to }) => from.atUs <= after.fromUs && after.fromUs < endOf(to));
    return [{ before, after, balanceBefore: balanceBefore ?? null, balanceAfter: balanceAfter ?? null }];
  });
}

function endOf(to: Balance['to']): number {
  return to?.atUs ?? Number.POSITIVE_INFINITY;
}

function balancesByItem(balances: readonly Balance[]): Map<string, Balance[]> {
  const byItem = new Map<string, Balance[]>();
  for (const balance of balances) byItem.set(balance.item, [...(byItem.get(balance.item) ?? []), balance]);
  return byItem;
}
