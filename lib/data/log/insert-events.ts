import type { Queryable } from '@/lib/data/pool';
import { readColumns, rowsSource } from '@/lib/data/rows';
import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { formatInstant } from '@/lib/domain/time';

/** An event with who brought it (a badge, or `token`), and what speaks against its having been brought so. */
export type Arriving = { event: LoggedEvent; recordedBy: string; delivery?: Refusal | null };

const COLUMNS = readColumns(
  'id uuid, type text, at timestamptz, at_sent text, unit text, station text, operator text, device text, device_seq bigint, uncertainty_ms bigint, gate text, body jsonb, recorded_at timestamptz, recorded_by text, delivery jsonb',
);

/** Adds events to the log in the given order, recorded at the given microsecond; one statement, whatever their number. */
export async function insertEvents(
  db: Queryable,
  arriving: readonly Arriving[],
  recordedAtUs: number,
): Promise<void> {
  if (arriving.length === 0) return;
  const recordedAt = formatInstant(recordedAtUs);
  const rows = arriving.map((each) => ({ ...logRow(each), recorded_at: recordedAt }));
  const { names, select, from, values } = rowsSource(COLUMNS, rows);
  await db.query(
    `insert into log.event (${names}) select ${select} from ${from} order by r.ordinality`,
    values,
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
