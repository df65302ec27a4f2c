import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

/** Units that were worked on last at a station and have gone nowhere since. */
export type Waiting = {
  station: string;
  units: number;
  failed: number;
  held: number;
  longestSinceUs: number | null;
};

const rowSchema = z.object({
  station: z.string(),
  units: z.number(),
  failed: z.number(),
  held: z.number(),
  longest_since: z.number().nullable(),
});

/**
 * Units in work by station: how many, with an open failure, on hold, and since when the one waits that waits longest.
 * Direction: place → units (unit_by_place); bound: the units in work. A unit inside another is where that one is.
 */
export async function countWaiting(db: Queryable): Promise<Waiting[]> {
  const { rows } = await db.query(
    `select u.place_station as station, count(*) as units,
       count(u.open_failure) as failed,
       count(*) filter (where exists (
         select from read.hold h
         where h.target_kind = 'unit' and h.target = u.unit and h.released_at = 'infinity')) as held,
       min(u.last_at) as longest_since
     from read.unit u
     where u.place = 'station' and u.place_station is not null and u.outermost is null
     group by u.place_station
     order by u.place_station`,
  );
  return rows.map((row) => {
    const { longest_since: longestSinceUs, ...counts } = rowSchema.parse(row);
    return { ...counts, longestSinceUs };
  });
}
