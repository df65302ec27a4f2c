import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { RecentFit } from '@/lib/domain/station/station-picture';

// "Lately" for what is usual at a station: enough to see every product of a shift.
const RESULTS_MAX = 100;

const rowSchema = z.object({
  product: z.string(),
  revision: z.string(),
  part: z.string(),
  item: z.string(),
});

/**
 * Which parts were scanned for which products at a station lately, each with the item scanned last. Direction:
 * event_at_station backwards over at most 100 results → their `used` → item by key.
 */
export async function findRecentFits(db: Queryable, station: string): Promise<RecentFit[]> {
  const { rows } = await db.query(
    `select distinct on (u.product, u.revision, i.part) u.product, u.revision, i.part, i.item
     from (
       select e.id, e.at, e.unit, e.body from log.event e
       where e.type = 'unit.processed' and e.station = $1
       order by e.at desc limit ${RESULTS_MAX}
     ) e
     cross join lateral jsonb_array_elements(coalesce(e.body -> 'used', '[]')) used
     join read.item i on i.item = used.value ->> 'item'
     join read.unit u on u.unit = e.unit
     where i.part is not null and u.product is not null and u.revision is not null
       and not exists (select from read.voided v where v.event = e.id)
     order by u.product, u.revision, i.part, e.at desc, e.id desc`,
    [station],
  );
  return rows.map((row) => rowSchema.parse(row));
}
