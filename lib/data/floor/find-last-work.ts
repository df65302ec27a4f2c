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

/** The newest result at each of the stations; one row from the end of event_at_station a station. */
export async function findLastWork(db: Queryable, stations: readonly string[]): Promise<LastWork[]> {
  const { rows } = await db.query(
    `select s.station, last.unit, u.product, u.revision, last.result, last.at
     from unnest($1::text[]) as s(station)
     cross join lateral (
       select e.unit, e.body ->> 'result' as result, e.at from log.event e
       where e.station = s.station collate "C" and e.type = 'unit.processed'
         and not exists (select from read.voided v where v.event = e.id)
       order by e.at desc, e.id desc limit 1
     ) last
     left join read.unit u on u.unit = last.unit
     order by s.station collate "C"`,
    [stations],
  );
  return rows.map((row) => rowSchema.parse(row));
}
