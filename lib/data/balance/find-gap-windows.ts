import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { Queryable } from '@/lib/data/pool';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import { type Gap, gapWindows } from '@/lib/domain/balance/gap-windows';
import type { Plant } from '@/lib/domain/plant/plant';

/** The windows that the events owed by scanning devices leave at stations: at some, or at all (null). */
export async function findGapWindows(db: Queryable, wanted: Scanned): Promise<DoubtWindow[]> {
  const gaps = await findGaps(db, wanted);
  if (gaps.length === 0) return [];
  const stays = await findStationStays(db, [...new Set(gaps.map(({ station }) => station))]);
  return gaps.flatMap((gap) => gapWindows(gap, stays));
}

/** Scanning devices of stations: of some, or of all (null). */
type Scanned = { plant: Plant; stations: readonly string[] | null };

/** When the events that scanning devices owe may have happened at stations. */
export async function findGaps(db: Queryable, wanted: Scanned): Promise<Gap[]> {
  const scanned = scannersOf(wanted);
  if (scanned.length === 0) return [];
  const owed = await findOwedTimes(db, [...new Set(scanned.map(({ device }) => device))]);
  return scanned.flatMap(({ station, device }) =>
    owed.filter((each) => each.device === device).map(({ between }): Gap => ({ station, between })),
  );
}

/** Which devices scan at which stations. */
export function scannersOf({ plant, stations }: Scanned): { station: string; device: string }[] {
  return (plant.file.stations ?? []).flatMap(({ code, scannedBy = [] }) =>
    stations === null || stations.includes(code)
      ? scannedBy.map((device) => ({ station: code, device }))
      : [],
  );
}

const owedRow = z.object({ device: z.string(), low: openInstantColumn, high: openInstantColumn });

/**
 * When the numbers that devices owe were used up: between the events with the numbers around each gap, refused ones
 * included. By event_of_device; a device has few gaps.
 */
async function findOwedTimes(db: Queryable, devices: readonly string[]) {
  const { rows } = await db.query(
    `select d.device, ${timesAround('lower(r) - 1', 'upper(r)')}
     from read.device d
     cross join lateral unnest(int8multirange(int8range(1, upper(d.received))) - d.received) as r
     where d.device = any($1)
     order by d.device, r`,
    [devices],
  );
  return rows.map((row) => {
    const { device, low, high } = owedRow.parse(row);
    return { device, between: { min: low, max: high } };
  });
}

/** The same for gaps at any time: inclusive ranges of numbers that had not arrived then. */
export async function findTimesAround(
  db: Queryable,
  gaps: readonly { device: string; from: number; to: number }[],
): Promise<{ device: string; between: Gap['between'] }[]> {
  const { rows } = await db.query(
    `select d.device, ${timesAround('d.before', 'd.after')}
     from unnest($1::text[], $2::bigint[], $3::bigint[]) as d(device, before, after)`,
    [gaps.map(({ device }) => device), gaps.map(({ from }) => from - 1), gaps.map(({ to }) => to + 1)],
  );
  return rows.map((row) => {
    const { device, low, high } = owedRow.parse(row);
    return { device, between: { min: low, max: high } };
  });
}

/**
 * SQL for the times of the numbers before and after a gap of a device (d). The table's quotes keep the record of a moment
 * from rewriting it: a number that had arrived tells its time also where its event happened after the moment.
 */
function timesAround(before: string, after: string): string {
  const around = (seq: string, sign: string, aggregate: string) => `
    coalesce(
      (select ${aggregate}(e.at ${sign} make_interval(secs => e.uncertainty_ms / 1000.0)) from log."event" e
       where e.device = d.device collate "C" and e.device_seq = ${seq}),
      (select ${aggregate}((f.content ->> 'at')::timestamptz
         ${sign} make_interval(secs => coalesce((f.content ->> 'uncertaintyMs')::double precision, 0) / 1000.0))
       from log.refusal f where f.device = d.device collate "C" and f.device_seq = ${seq}))`;
  return `coalesce(${around(before, '-', 'min')}, timestamptz '1970-01-01Z') as low,
          coalesce(${around(after, '+', 'max')}, 'infinity') as high`;
}

const stayRow = z.object({
  item: z.string(),
  station: z.string(),
  slot: z.string(),
  from_at: z.number(),
  to_at: openInstantColumn,
});

/** Everything that stood in the slots of stations, in order of station, slot, time and event; by mount_in_slot. */
async function findStationStays(db: Queryable, stations: readonly string[]) {
  const { rows } = await db.query(
    `select item, station, slot, from_at, to_at
     from read.mount
     where station = any($1) and from_at < to_at
     order by station, slot, from_at, event`,
    [stations],
  );
  return rows.map((row) => {
    const { from_at: fromUs, to_at: toUs, ...stay } = stayRow.parse(row);
    return { ...stay, fromUs, toUs };
  });
}
