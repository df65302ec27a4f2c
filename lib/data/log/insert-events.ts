import type { Queryable } from '@/lib/data/pool';
import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { formatInstant } from '@/lib/domain/time';

/** An event with who brought it (a badge, or `token`), and what speaks against its having been brought so. */
export type Arriving = { event: LoggedEvent; recordedBy: string; delivery?: Refusal | null };

/** Adds events to the log in the given order, recorded at the given microsecond; one statement, whatever their number. */
export async function insertEvents(
  db: Queryable,
  arriving: readonly Arriving[],
  recordedAtUs: number,
): Promise<void> {
  if (arriving.length === 0) return;
  const rows = arriving.map((each, ordinal) => ({ ordinal, ...logRow(each) }));
  await db.query(
    `insert into log.event (id, type, at, at_sent, unit, station, operator, device, device_seq, uncertainty_ms, gate,
       body, recorded_at, recorded_by, delivery)
     select r.id, r.type, r.at, r.at_sent, r.unit, r.station, r.operator, r.device, r.device_seq, r.uncertainty_ms,
       r.gate, r.body, $2::timestamptz, r.recorded_by, nullif(r.delivery, 'null'::jsonb)
     from jsonb_to_recordset($1::jsonb) as r(ordinal integer, id uuid, type text, at timestamptz, at_sent text,
       unit text, station text, operator text, device text, device_seq bigint, uncertainty_ms bigint, gate text,
       body jsonb, recorded_by text, delivery jsonb)
     order by r.ordinal`,
    [JSON.stringify(rows), formatInstant(recordedAtUs)],
  );
}

/** An event's row in the log, but for its position and when it was recorded. */
export function logRow({ event, recordedBy, delivery = null }: Arriving) {
  return {
    id: event.id,
    type: event.type,
    at: formatInstant(event.atUs),
    at_sent: event.at,
    unit: subjectUnit(event),
    station: event.station ?? null,
    operator: event.operator ?? null,
    device: event.device ?? null,
    device_seq: event.deviceSeq ?? null,
    uncertainty_ms: event.uncertaintyMs ?? 0,
    gate: event.gate ?? 'enforce',
    body: event.body,
    recorded_by: recordedBy,
    delivery,
  };
}
