import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { Completeness } from '@/lib/domain/genealogy/answer';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  device: z.string(),
  missing: z.array(z.tuple([z.number(), z.number()])),
  highest: z.number(),
  last_seen_at: z.number().nullable(),
  retired_at: z.number().nullable(),
  reason: z.string().nullable(),
});

/**
 * What is missing now (or at the moment of a record: say when that is), by device: gaps up to the highest number that has arrived, as inclusive ranges. Of a device that
 * was retired they are lost; it is named also without a gap, since what it made last may have stayed on it. One row a
 * device, and few of those have gaps.
 */
export async function findCompleteness(
  db: Queryable,
  asOf = formatInstant(Date.now() * 1000),
): Promise<Completeness> {
  const { rows } = await db.query(
    `select device, d.last_seen_at, coalesce(upper(d.received) - 1, 0) as highest, gaps.missing,
       r.at as retired_at, r.reason
     from read.device d
     full join (
       select distinct on (device) device, at, reason from read.device_retirement order by device, at, event
     ) r using (device)
     cross join lateral (
       select coalesce(json_agg(json_build_array(lower(gap), upper(gap) - 1) order by lower(gap)), '[]') as missing
       from unnest(int8multirange(int8range(1, upper(d.received))) - d.received) as gap
     ) gaps
     where r.device is not null or d.received <> int8multirange(int8range(1, upper(d.received)))
     order by device`,
  );
  const found = rows.map((row) => rowSchema.parse(row));
  const owing = found.flatMap(({ device, missing, last_seen_at, retired_at }) =>
    retired_at !== null || last_seen_at === null
      ? []
      : [{ device, missing, lastSeenAt: formatInstant(last_seen_at) }],
  );
  const lost = found.flatMap(({ device, missing, highest, last_seen_at, retired_at, reason }) =>
    retired_at === null
      ? []
      : [
          {
            device,
            missing,
            highest,
            lastSeenAt: last_seen_at === null ? null : formatInstant(last_seen_at),
            retiredAt: formatInstant(retired_at),
            reason: reason ?? '',
          },
        ],
  );
  return { asOf, complete: owing.length === 0 && lost.length === 0, owing, lost };
}
