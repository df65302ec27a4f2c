import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { formatInstant } from '@/lib/domain/time';

/** Results of a station in one hour: units that passed and units that failed at least once. */
export type StationHour = { station: string; hourUs: number; passed: number; failed: number };

const rowSchema = z.object({
  station: z.string(),
  hour: z.number(),
  passed: z.number(),
  failed: z.number(),
});

/**
 * Results by station and clock hour since a moment, in order of station and hour.
 *
 * Direction: time → results (event_at). Bound: the results of that time; cost: one index row each.
 */
export async function countStationWork(db: Queryable, sinceUs: number): Promise<StationHour[]> {
  const { rows } = await db.query(
    `select e.station, date_trunc('hour', e.at) as hour,
       count(distinct e.unit) filter (where e.body ->> 'result' = 'pass') as passed,
       count(distinct e.unit) filter (where e.body ->> 'result' = 'fail') as failed
     from log.event e
     where e.type = 'unit.processed' and e.at >= $1::timestamptz
       and not exists (select from read.voided v where v.event = e.id)
     group by e.station, hour
     order by e.station, hour`,
    [formatInstant(sinceUs)],
  );
  return rows.map((row) => {
    const { station, hour, passed, failed } = rowSchema.parse(row);
    return { station, hourUs: hour, passed, failed };
  });
}
