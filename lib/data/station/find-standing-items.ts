import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import type { StandingItem } from '@/lib/domain/station/slot-picture';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  slot: z.string(),
  item: z.string(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  lot: z.string().nullable(),
  quantity: z.number().nullable(),
  is_retired: z.boolean().nullable(),
  is_held: z.boolean(),
  from_at: z.number(),
  old_end: z.string().nullable(),
});

/**
 * What stands in a station's slots now, by slot, with whether it or its lot is on hold. Direction: station → its open
 * mounts (mount_open) → item by key → its holds (hold_open); some dozens of rows.
 */
export async function findStandingItems(db: Queryable, station: string): Promise<Map<string, StandingItem>> {
  const { rows } = await db.query(
    `select m.slot, m.item, m.from_at, i.kind, i.part, i.lot, i.quantity, i.is_retired,
       exists (
         select from read.hold h
         where h.released_at = 'infinity'
           and (h.target_kind = 'item' and h.target = m.item or h.target_kind = 'lot' and h.target = i.lot)
       ) as is_held,
       (
         select g.item from read.splice g where g.event = m.event and read.grey_until(g.event) > now() limit 1
       ) as old_end
     from read.mount m left join read.item i on i.item = m.item
     where m.station = $1 and m.to_at = 'infinity'
     order by m.slot, m.from_at, m.event`,
    [station],
  );
  return new Map(
    rows.map((row) => {
      const { slot, is_retired, is_held, from_at, old_end, ...item } = rowSchema.parse(row);
      const since = formatInstant(from_at);
      return [slot, { ...item, isHeld: is_held, isRetired: is_retired ?? false, since, oldEnd: old_end }];
    }),
  );
}
