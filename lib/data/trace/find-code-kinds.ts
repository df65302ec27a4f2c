import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({
  unit: z.boolean(),
  item: z.boolean(),
  lot: z.boolean(),
  part: z.boolean(),
  container: z.boolean(),
  shipment: z.boolean(),
  panel: z.boolean(),
  order: z.boolean(),
});

/** What the record knows under a code. */
export type RecordedKinds = z.infer<typeof rowSchema>;

/** A start that names the code, by the index of its own that each of the two has. */
function startedWith(field: 'panel' | 'order'): string {
  return `select from log.event e where e.type = 'unit.started' and e.body ? '${field}'
    and (e.body ->> '${field}') collate "C" = $1 and not exists (select from read.voided v where v.event = e.id)`;
}

/** Which kinds of thing carry a code, by one index look-up each; an item also counts that was only ever used. */
export async function findCodeKinds(db: Queryable, code: string): Promise<RecordedKinds> {
  const { rows } = await db.query(
    `select exists (select from read.unit where unit = $1) as unit,
       exists (select from read.item where item = $1)
         or exists (select from read.mount where item = $1)
         or exists (select from read.direct_draw where item = $1) as item,
       exists (select from read.item where lot = $1) as lot,
       exists (select from read.item where part = $1) as part,
       exists (select from read.container where container = $1) as container,
       exists (select from read.container where own_shipment = $1) as shipment,
       exists (${startedWith('panel')}) as panel,
       exists (${startedWith('order')}) as "order"`,
    [code],
  );
  return rowSchema.parse(rows[0]);
}
