import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const RESULTS_MAX = 20;

const rowSchema = z.object({ product: z.string() });

/**
 * Products whose units it was usual to put in at each of some stations just before a moment (RFC 3339); one moment a
 * station. Direction: event_at_station backwards over 20 results of each → joining_of_outer → the join's event by id.
 */
export async function findUsualJoins(
  db: Queryable,
  passes: readonly { station: string; at: string }[],
): Promise<string[]> {
  const { rows } = await db.query(
    `select distinct inner_unit.product
     from unnest($1::text[], $2::timestamptz[]) as own (station, at)
     cross join lateral (
       select e.unit from log.event e
       where e.type = 'unit.processed' and e.station = own.station and e.at < own.at
         and not exists (select from read.voided v where v.event = e.id)
       order by e.at desc limit ${RESULTS_MAX}
     ) passed
     join read.joining j on j.outer_unit = passed.unit
     join log.event joined on joined.id = j.event and joined.station = own.station
     join read.unit inner_unit on inner_unit.unit = j.inner_unit
     where inner_unit.product is not null
     order by 1`,
    [passes.map(({ station }) => station), passes.map(({ at }) => at)],
  );
  return rows.map((row) => rowSchema.parse(row).product);
}
