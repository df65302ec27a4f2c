import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { DEVICES_MAX, type DeviceEntry } from '@/lib/domain/devices/device-list';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  total: z.number(),
  device: z.string(),
  highest: z.number(),
  missing: z.array(z.tuple([z.number(), z.number()])),
  missing_count: z.number(),
  missing_since: z.number().nullable(),
  last_seen_at: z.number().nullable(),
  has_event: z.boolean(),
  station: z.string().nullable(),
  operator: z.string().nullable(),
  uncertainty_ms: z.number().nullable(),
  retirement: z.string().nullable(),
  retired_at: z.number().nullable(),
  reason: z.string().nullable(),
});

/**
 * Devices that have spoken or were retired: those that owe first, then the retired ones, then by when they were last
 * heard of. One row a device, with two look-ups by device and number for each that is shown.
 */
export async function findDevices(db: Queryable): Promise<{ total: number; devices: DeviceEntry[] }> {
  const { rows } = await db.query(
    `with known as (
       select device, d.last_seen_at, coalesce(upper(d.received) - 1, 0) as highest, gaps.missing, gaps.missing_count,
         gaps.first_end, r.event as retirement, r.at as retired_at, r.reason, count(*) over () as total
       from read.device d
       full join (
         select distinct on (device) device, event, at, reason from read.device_retirement order by device, at, event
       ) r using (device)
       cross join lateral (
         select coalesce(json_agg(json_build_array(lower(gap), upper(gap) - 1) order by lower(gap)), '[]') as missing,
           coalesce(sum(upper(gap) - lower(gap)), 0)::int8 as missing_count, min(upper(gap)) as first_end
         from unnest(int8multirange(int8range(1, upper(d.received))) - d.received) as gap
       ) gaps
       order by (r.event is null and gaps.missing_count > 0) desc, (r.event is not null) desc,
         d.last_seen_at desc nulls last, device
       limit $1
     )
     select k.*, after.recorded_at as missing_since, last.id is not null as has_event, last.station, last.operator,
       last.uncertainty_ms
     from known k
     left join lateral (
       select e.recorded_at from log.event e
       where e.device = k.device and e.device_seq >= k.first_end order by e.device_seq limit 1
     ) after on true
     left join lateral (
       select e.id, e.station, e.operator, e.uncertainty_ms from log.event e
       where e.device = k.device order by e.device_seq desc limit 1
     ) last on true
     order by (k.retirement is null and k.missing_count > 0) desc, (k.retirement is not null) desc,
       k.last_seen_at desc nulls last, k.device`,
    [DEVICES_MAX],
  );
  const found = rows.map((row) => rowSchema.parse(row));
  return { total: found[0]?.total ?? 0, devices: found.map(entryOf) };
}

function entryOf(row: z.infer<typeof rowSchema>): DeviceEntry {
  const { device, highest, missing, missing_count, last_seen_at, retirement, retired_at } = row;
  return {
    device,
    highest,
    missing,
    missingCount: missing_count,
    missingSince: instantOrNull(row.missing_since),
    lastSeenAt: instantOrNull(last_seen_at),
    last: row.has_event
      ? { station: row.station, operator: row.operator, uncertaintyMs: row.uncertainty_ms ?? 0 }
      : null,
    retired:
      retirement === null || retired_at === null
        ? null
        : {
            event: retirement,
            at: formatInstant(retired_at),
            reason: row.reason ?? '',
            hasSpokenSince: last_seen_at !== null && last_seen_at > retired_at,
          },
  };
}

function instantOrNull(us: number | null): string | null {
  return us === null ? null : formatInstant(us);
}
