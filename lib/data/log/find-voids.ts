import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { VoidedBy } from '@/lib/domain/events/recorded-event';

const rowSchema = z.object({
  event: z.string(),
  void: z.string(),
  at: z.string(),
  by: z.string(),
  reason: z.string(),
});

/** The voids that end events, by the id of the voided event; the first of several; by read.voided's key. */
export async function findVoids(db: Queryable, events: readonly string[]): Promise<Map<string, VoidedBy>> {
  const { rows } = await db.query(
    `select distinct on (v.event) v.event, v.void, e.at_sent as at, coalesce(e.operator, e.recorded_by) as by,
       e.body ->> 'reason' as reason
     from read.voided v
     join log.event e on e.id = v.void
     where v.event = any($1::uuid[])
     order by v.event, v.void`,
    [events],
  );
  return new Map(
    rows.map((row) => {
      const { event, void: id, at, by, reason } = rowSchema.parse(row);
      return [event, { id, at, by, reason }];
    }),
  );
}
