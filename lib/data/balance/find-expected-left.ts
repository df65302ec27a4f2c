import { findAnchors } from '@/lib/data/balance/find-anchors';
import { findUse } from '@/lib/data/balance/find-use';
import type { Queryable } from '@/lib/data/pool';
import type { Range } from '@/lib/domain/balance/ledger';
import { expectedLeft } from '@/lib/domain/balance/weigh-period';
import type { Plant } from '@/lib/domain/plant/plant';

/** What must be left of a reel now; null where its part is not weighed or nothing ever said how much there was. */
export async function findExpectedLeft(
  db: Queryable,
  { item, part, plant }: { item: string; part: string | null; plant: Plant },
): Promise<Range | null> {
  const attrition = part === null ? null : plant.attritionOf(part);
  if (attrition === null) return null;
  const from = (await findAnchors(db, [item])).get(item)?.at(-1);
  if (from === undefined) return null;
  const [used] = await findUse(db, [{ item, from, to: null }]);
  return used === undefined ? null : expectedLeft(from.left, { attrition, used });
}
