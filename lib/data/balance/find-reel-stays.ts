import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { Queryable } from '@/lib/data/pool';
import type { ReelStay } from '@/lib/domain/balance/ledger';

const rowSchema = z.object({
  event: z.string(),
  item: z.string(),
  station: z.string(),
  slot: z.string(),
  from_at: z.number(),
  to_at: openInstantColumn,
});

/**
 * The stays of items in slots, with the stay before and the one after each of them there, in order of station, slot,
 * time and event. By mount_of_item, then one probe of mount_in_slot to either side.
 */
export async function findReelStays(db: Queryable, items: readonly string[]): Promise<ReelStay[]> {
  const { rows } = await db.query(
    `select distinct x.event, x.item, x.station, x.slot, x.from_at, x.to_at
     from read.mount m
     cross join lateral (
       select m.*
       union all
       (select b.* from read.mount b
        where b.station = m.station and b.slot = m.slot and (b.from_at, b.event) < (m.from_at, m.event)
          and b.from_at < b.to_at
        order by b.from_at desc, b.event desc limit 1)
       union all
       (select a.* from read.mount a
        where a.station = m.station and a.slot = m.slot and (a.from_at, a.event) > (m.from_at, m.event)
          and a.from_at < a.to_at
        order by a.from_at, a.event limit 1)
     ) x
     where m.item = any($1) and m.from_at < m.to_at
     order by station, slot, from_at, event`,
    [items],
  );
  return rows.map((row) => {
    const { from_at: fromUs, to_at: toUs, ...stay } = rowSchema.parse(row);
    return { ...stay, fromUs, toUs };
  });
}
