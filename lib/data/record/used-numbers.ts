import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** Which numbers of devices belong to other events. */
export type UsedNumbers = {
  isTaken(event: LoggedEvent): boolean;
  /** Notes the number of an event that is recorded, or refused by a rule. */
  take(event: LoggedEvent): void;
};

/** For a batch in which nobody asks. */
export const NO_NUMBERS: UsedNumbers = { isTaken: () => false, take: () => undefined };

const rowSchema = z.object({ id: z.string() });

/**
 * The numbers that have arrived with other events, for those events whose device gives each number once. By the keys
 * of read.device, log.event and refusal_of_event, one row an event.
 */
export async function openUsedNumbers(db: Queryable, events: readonly LoggedEvent[]): Promise<UsedNumbers> {
  const rows = events.flatMap(({ id, device, deviceSeq }) =>
    device === undefined || deviceSeq === undefined ? [] : [{ id, device, seq: deviceSeq }],
  );
  if (rows.length === 0) return NO_NUMBERS;
  const found = await db.query(
    `select x.id from jsonb_to_recordset($1::jsonb) as x(id uuid, device text, seq bigint)
     join read.device d on d.device = x.device and d.received @> x.seq
     where not exists (select from log.event e where e.id = x.id)
       and not exists (
         select from log.refusal r where r.event = x.id and r.device = x.device and r.device_seq = x.seq)`,
    [JSON.stringify(rows)],
  );
  const taken = new Set(found.rows.map((row) => rowSchema.parse(row).id));
  const inBatch = new Map<string, string>();
  return {
    isTaken: (event) => taken.has(event.id) || (inBatch.get(numberOf(event)) ?? event.id) !== event.id,
    take: (event) => {
      if (event.device !== undefined) inBatch.set(numberOf(event), event.id);
    },
  };
}

function numberOf({ device, deviceSeq }: LoggedEvent): string {
  return JSON.stringify([device, deviceSeq]);
}
