import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { resultSchema } from '@/lib/domain/events/vocabulary';

const rowSchema = z.object({
  station: z.string(),
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  result: resultSchema,
  at: z.number(),
});

/** The newest result of a station, with the product of its unit. */
export type LastWork = z.infer<typeof rowSchema>;

/**
 * The newest result at each of the stations, in their order.
 *
 * Direction: station → the end of its range in event_at_station, one row each. The pair is compared as a whole: asked
 * by station and time apart, PostgreSQL walks the index by time alone, through everything for a station never used.
 */
export async function findLastWork(db: Queryable, stations: readonly string[]): Promise<LastWork[]> {
  const { rows } = await db.query(
    `select last.station, last.unit, u.product, u.revision, last.result, last.at
     from unnest($1::text[]) as s(station)
     cross join lateral (
       select e.station, e.unit, e.body ->> 'result' as result, e.at from log.event e
       where (e.station, e.at) <= (s.station collate "C", 'infinity'::timestamptz)
         and e.type = 'unit.processed'
         and not exists (select from read.voided v where v.event = e.id)
       order by e.station desc, e.at desc limit 1
     ) last
     left join read.unit u on u.unit = last.unit
     where last.station = s.station collate "C"
     order by last.station`,
    [stations],
  );
  return rows.map((row) => rowSchema.parse(row));
}
