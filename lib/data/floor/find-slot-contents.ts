import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({
  station: z.string(),
  slot: z.string(),
  item: z.string(),
  part: z.string().nullable(),
  is_held: z.boolean(),
});

/** What stands in a slot now, and whether it or its lot is on hold. */
export type SlotContent = {
  station: string;
  slot: string;
  item: string;
  part: string | null;
  isHeld: boolean;
};

/** Everything that is mounted now; by mount_open, one row a filled slot. */
export async function findSlotContents(db: Queryable): Promise<SlotContent[]> {
  const { rows } = await db.query(
    `select m.station, m.slot, m.item, i.part, exists (
       select from read.hold h
       where h.released_at = 'infinity'
         and (h.target_kind, h.target) in (('item', m.item), ('lot', coalesce(i.lot, '')))) as is_held
     from read.mount m
     left join read.item i on i.item = m.item
     where m.to_at = 'infinity'
     order by m.station, m.slot, m.event`,
  );
  return rows.map((row) => {
    const { is_held: isHeld, ...content } = rowSchema.parse(row);
    return { ...content, isHeld };
  });
}
