import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { itemKindSchema, resultSchema } from '@/lib/domain/events/vocabulary';
import type { ItemPicture } from '@/lib/domain/station/scan-picture';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  item: z.string(),
  kind: itemKindSchema,
  part: z.string().nullable(),
  lot: z.string().nullable(),
  supplier: z.string().nullable(),
  quantity: z.number().nullable(),
  counted_at: z.number().nullable(),
  inspected: resultSchema.nullable(),
  is_retired: z.boolean(),
  mounted: z.array(z.object({ station: z.string(), slot: z.string(), since: z.string() })),
  holds: z.array(z.object({ hold: z.string(), reason: z.string(), automatic: z.boolean(), at: z.string() })),
});

/**
 * An item with where it stands now and the holds open on it or its lot; null when it was never received. By keys:
 * read.item, mount_of_item, hold_open.
 */
export async function findItemPicture(db: Queryable, item: string): Promise<ItemPicture | null> {
  const { rows } = await db.query(
    `select i.item, i.kind, i.part, i.lot, i.supplier, i.quantity, i.counted_at, i.inspected, i.is_retired,
       coalesce((select jsonb_agg(jsonb_build_object('station', m.station, 'slot', m.slot, 'since', m.from_at)
                          order by m.station, m.slot)
         from read.mount m where m.item = i.item and m.to_at = 'infinity'), '[]') as mounted,
       coalesce((select jsonb_agg(jsonb_build_object('hold', h.hold, 'reason', h.reason, 'automatic', h.is_automatic,
                          'at', h.placed_at) order by h.placed_at, h.hold)
         from read.hold h
         where h.released_at = 'infinity'
           and (h.target_kind = 'item' and h.target = i.item or h.target_kind = 'lot' and h.target = i.lot)
       ), '[]') as holds
     from read.item i where i.item = $1`,
    [item],
  );
  if (rows[0] === undefined) return null;
  const { counted_at, is_retired, ...picture } = rowSchema.parse(rows[0]);
  return {
    ...picture,
    isRetired: is_retired,
    countedAt: counted_at === null ? null : formatInstant(counted_at),
  };
}
