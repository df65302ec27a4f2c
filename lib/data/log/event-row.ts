import { z } from 'zod';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { type LoggedEvent, toLogged } from '@/lib/domain/events/logged-event';

/** Columns that `readEventRow` wants, from log.event under the alias `e`. */
export const EVENT_COLUMNS = `e.id, e.type, e.at_sent, e.station, e.operator, e.device, e.device_seq, e.uncertainty_ms,
  e.gate, e.body`;

const eventRowSchema = z.object({
  id: z.string(),
  type: z.string(),
  at_sent: z.string(),
  station: z.string().nullable(),
  operator: z.string().nullable(),
  device: z.string().nullable(),
  device_seq: z.number().nullable(),
  uncertainty_ms: z.number(),
  gate: z.string(),
  body: z.unknown(),
});

/** An event as it was sent, out of its row in the log; defaults stay absent. */
export function readEventRow(row: unknown): LoggedEvent {
  const { id, type, at_sent, station, operator, device, device_seq, uncertainty_ms, gate, body } =
    eventRowSchema.parse(row);
  return toLogged(
    eventSchema.parse({
      id,
      type,
      at: at_sent,
      ...(station === null ? {} : { station }),
      ...(operator === null ? {} : { operator }),
      ...(device === null ? {} : { device, deviceSeq: device_seq }),
      ...(uncertainty_ms === 0 ? {} : { uncertaintyMs: uncertainty_ms }),
      ...(gate === 'enforce' ? {} : { gate }),
      body,
    }),
  );
}
