import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { Queryable } from '@/lib/data/pool';
import type { SlotStay } from '@/lib/domain/items/item-record';
import { formatInstant } from '@/lib/domain/time';

const STAYS_MAX = 2000;

const rowSchema = z.object({
  event: z.string(),
  station: z.string(),
  slot: z.string(),
  from_at: z.number(),
  to_at: openInstantColumn,
});

/** The newest 2,000 stays of an item in slots, in order; by mount_of_item. Empty intervals are left out. */
export async function findStays(db: Queryable, item: string): Promise<SlotStay[]> {
  const { rows } = await db.query(
    `select event, station, slot, from_at, to_at from read.mount
     where item = $1 and from_at < to_at
     order by from_at desc, event desc limit ${STAYS_MAX}`,
    [item],
  );
  return rows.reverse().map((row) => {
    const { event, station, slot, from_at, to_at } = rowSchema.parse(row);
    const until = to_at === Number.POSITIVE_INFINITY ? null : formatInstant(to_at);
    return { event, station, slot, from: formatInstant(from_at), until };
  });
}
