import { v7 } from 'uuid';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { findUnheld } from '@/lib/data/trace/find-unheld';
import { onSnapshotOnce } from '@/lib/data/transaction';
import { HOLDS_MAX, type HoldPlan, type HoldWish } from '@/lib/domain/holds/hold-plan';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/**
 * The holds that a narrowed answer wants now, each with its id: whoever sends them may send them again after a lost
 * answer. Records nothing; units already on hold for this reason are left out, so a plan can be made again at any time.
 */
export function planHolds(wish: HoldWish): Promise<HoldPlan> {
  return onSnapshotOnce(database().pool, async (client) => {
    const { plant } = await loadPlant(client);
    const { units, count } = await findUnheld(client, wish, { plant, countMax: HOLDS_MAX });
    return {
      at: formatInstant(Date.now() * 1000),
      holds: units.map((unit) => ({ id: v7(), unit })),
      rest: count - units.length,
    };
  });
}
