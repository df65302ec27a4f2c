import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { ProductName } from '@/lib/domain/station/station-picture';

const RESULTS_MAX = 20;

const rowSchema = z.object({ product: z.string(), revision: z.string() });

/**
 * Products whose units were joined at a station into the units that it passed lately. Direction: event_at_station
 * backwards over 20 results → joining_of_outer → the join's event by id.
 */
export async function findRecentJoins(db: Queryable, station: string): Promise<ProductName[]> {
  const { rows } = await db.query(
    `select distinct inner_unit.product, inner_unit.revision
     from (
       select e.unit from log.event e
       where e.type = 'unit.processed' and e.station = $1
       order by e.at desc limit ${RESULTS_MAX}
     ) passed
     join read.joining j on j.outer_unit = passed.unit
     join log.event joined on joined.id = j.event and joined.station = $1
     join read.unit inner_unit on inner_unit.unit = j.inner_unit
     where inner_unit.product is not null and inner_unit.revision is not null
     order by 1, 2`,
    [station],
  );
  return rows.map((row) => rowSchema.parse(row));
}
