import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { formatInstant } from '@/lib/domain/time';

/** Notes which numbers of which devices have arrived; recorded and rule-refused events both count as arrived. */
export async function noteArrivals(
  db: Queryable,
  events: readonly Pick<LoggedEvent, 'device' | 'deviceSeq'>[],
  arrivedAtUs: number,
): Promise<void> {
  const rows = events.flatMap(({ device, deviceSeq }) =>
    device === undefined || deviceSeq === undefined ? [] : [{ device, seq: deviceSeq }],
  );
  if (rows.length === 0) return;
  await db.query(
    `insert into read.device (device, received, last_seen_at)
     select device, range_agg(int8range(seq, seq, '[]')), $3::timestamptz
     from unnest($1::text[], $2::bigint[]) as r(device, seq)
     group by device
     on conflict (device) do update set received = device.received + excluded.received,
       last_seen_at = greatest(device.last_seen_at, excluded.last_seen_at)`,
    [rows.map(({ device }) => device), rows.map(({ seq }) => seq), formatInstant(arrivedAtUs)],
  );
}
