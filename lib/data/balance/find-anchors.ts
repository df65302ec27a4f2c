import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { Anchor } from '@/lib/domain/balance/ledger';

const rowSchema = z.object({
  event: z.string(),
  item: z.string(),
  at: z.number(),
  low: z.number(),
  high: z.number(),
  left: z.number(),
  is_final: z.boolean(),
});

/**
 * The moments at which events say how much is left of items, in order. A reel that a splice ended is empty where the
 * grey zone is used up, which lies after the splice; that is not final, since it may turn out not to be empty.
 *
 * By event_of_item and splice_of_item: an item has some dozens of events.
 */
export async function findAnchors(db: Queryable, items: readonly string[]): Promise<Map<string, Anchor[]>> {
  const { rows } = await db.query(
    `select e.id as event, e.body ->> 'item' as item, e.at, e.at - d.doubt as low, e.at + d.doubt as high, x.left,
            e.type = 'item.retired' as is_final
     from log.event e
     cross join lateral (select make_interval(secs => e.uncertainty_ms / 1000.0) as doubt) d
     cross join lateral (
       select coalesce(e.body ->> 'left', e.body ->> 'quantity')::double precision as left
     ) x
     where (e.body ->> 'item') collate "C" = any($1) and e.type like 'item.%' and x.left is not null
       and not exists (select from read.voided v where v.event = e.id)
     union all
     select m.event, g.item, z.at, z.at, z.at, 0, false
     from read.splice g
     join read.mount m on m.event = g.event
     cross join lateral (select read.grey_until(m.event) as at) z
     where g.item = any($1) and z.at < 'infinity'
     order by item, at, event`,
    [items],
  );
  const anchors = new Map<string, Anchor[]>(items.map((item) => [item, []]));
  for (const row of rows) {
    const { at, low, high, is_final: isFinal, ...anchor } = rowSchema.parse(row);
    anchors.get(anchor.item)?.push({ ...anchor, atUs: at, lowUs: low, highUs: high, isFinal });
  }
  return anchors;
}
