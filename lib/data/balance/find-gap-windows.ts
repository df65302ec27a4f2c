import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { Queryable } from '@/lib/data/pool';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import { type Gap, gapWindows } from '@/lib/domain/balance/gap-windows';
import type { Plant } from '@/lib/domain/plant/plant';

/** The windows that the events owed by scanning devices leave at stations: at some, or at all (null). */
export async function findGapWindows(
  db: Queryable,
  { plant, stations }: { plant: Plant; stations: readonly string[] | null },
): Promise<DoubtWindow[]> {
  const scanned = (plant.file.stations ?? []).flatMap(({ code, scannedBy = [] }) =>
    stations === null || stations.includes(code)
      ? scannedBy.map((device) => ({ station: code, device }))
      : [],
  );
  if (scanned.length === 0) return [];
  const owed = await findOwedTimes(db, [...new Set(scanned.map(({ device }) => device))]);
  const gaps = scanned.flatMap(({ station, device }) =>
    owed.filter((each) => each.device === device).map((each): Gap => ({ station, between: each.between })),
  );
  if (gaps.length === 0) return [];
  const stays = await findStationStays(db, [...new Set(gaps.map(({ station }) => station))]);
  return gaps.flatMap((gap) => gapWindows(gap, stays));
}

const owedRow = z.object({ device: z.string(), low: openInstantColumn, high: openInstantColumn });

/**
 * When the numbers that devices owe were used up: between the events with the numbers around each gap, refused ones
 * included. By event_of_device; a device has few gaps.
 */
async function findOwedTimes(db: Queryable, devices: readonly string[]) {
  const around = (seq: string, sign: string, aggregate: string) => `
    coalesce(
      (select ${aggregate}(e.at ${sign} make_interval(secs => e.uncertainty_ms / 1000.0)) from log.event e
       where e.device = d.device and e.device_seq = ${seq}),
      (select ${aggregate}((f.content ->> 'at')::timestamptz
         ${sign} make_interval(secs => coalesce((f.content ->> 'uncertaintyMs')::double precision, 0) / 1000.0))
       from log.refusal f where f.device = d.device and f.device_seq = ${seq}))`;
  const { rows } = await db.query(
    `select d.device, coalesce(${around('lower(r) - 1', '-', 'min')}, timestamptz '1970-01-01Z') as low,
            coalesce(${around('upper(r)', '+', 'max')}, 'infinity') as high
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
