import { findAnchors } from '@/lib/data/balance/find-anchors';
import { findReelStays } from '@/lib/data/balance/find-reel-stays';
import { findReels } from '@/lib/data/balance/find-reels';
import { findUse } from '@/lib/data/balance/find-use';
import type { Queryable } from '@/lib/data/pool';
import type { Balance, Ledger, Period, Range } from '@/lib/domain/balance/ledger';
import { weighPeriod } from '@/lib/domain/balance/weigh-period';
import type { Plant } from '@/lib/domain/plant/plant';

const OPEN = Number.POSITIVE_INFINITY;

/** Weighs the given reels, and those that stood before and after them, in every period that meets `during`. */
export async function weighReels(
  db: Queryable,
  options: { plant: Plant; items: readonly string[]; during?: Range },
): Promise<Ledger> {
  const { plant, items, during = { min: Number.NEGATIVE_INFINITY, max: OPEN } } = options;
  const stays = (await findReelStays(db, items)).filter(
    ({ fromUs, toUs }) => fromUs <= during.max && toUs >= during.min,
  );
  const parts = await findReels(db, { items: [...new Set([...items, ...stays.map(({ item }) => item)])] });
  const weighed = [...parts].flatMap(([item, part]) => {
    const attrition = plant.attritionOf(part);
    return attrition === null ? [] : [{ item, part, attrition }];
  });
  const anchors = await findAnchors(
    db,
    weighed.map(({ item }) => item),
  );
  const periods = weighed.flatMap((reel) => {
    const own = anchors.get(reel.item) ?? [];
    return own.map((from, index): typeof reel & Period => ({ ...reel, from, to: own[index + 1] ?? null }));
  });
  const wanted = periods.filter(
    ({ from, to }) => from.lowUs <= during.max && (to?.highUs ?? OPEN) >= during.min,
  );
  const used = await findUse(db, wanted);
  const balances = wanted.flatMap(({ part, attrition, ...period }, index): Balance[] => {
    const balance = weighPeriod(period, { part, attrition, used: used[index] ?? { min: 0, max: 0 } });
    return balance === null ? [] : [balance];
  });
  return { balances, stays };
}
