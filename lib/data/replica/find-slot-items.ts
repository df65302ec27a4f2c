import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import type { ReplicaAnswer } from '@/lib/domain/replica/replica-answer';

const rowSchema = z.object({
  slot: z.string(),
  item: z.string(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  lot: z.string().nullable(),
  is_retired: z.boolean().nullable(),
  holds: z.array(
    z.object({ hold: z.string(), reason: z.string(), kind: z.enum(['item', 'lot']), id: z.string() }),
  ),
});

/** What stands in a station's slots, with the holds open on it and on its lot; mount_open, then by keys. */
export async function findSlotItems(db: Queryable, station: string): Promise<ReplicaAnswer['items']> {
  const { rows } = await db.query(
    `select m.slot, m.item, i.kind, i.part, i.lot, i.is_retired,
       coalesce((select jsonb_agg(jsonb_build_object('hold', h.hold, 'reason', h.reason, 'kind', h.target_kind,
           'id', h.target) order by h.placed_at, h.hold)
         from read.hold h
         where h.released_at = 'infinity'
           and (h.target_kind = 'item' and h.target = m.item or h.target_kind = 'lot' and h.target = i.lot)
       ), '[]') as holds
     from read.mount m left join read.item i on i.item = m.item
     where m.station = $1 and m.to_at = 'infinity'
     order by m.slot, m.from_at, m.event`,
    [station],
  );
  return rows.map((row) => {
    const { is_retired: isRetired, ...item } = rowSchema.parse(row);
    return { ...item, isRetired: isRetired ?? false };
  });
}
