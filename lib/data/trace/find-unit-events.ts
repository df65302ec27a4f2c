import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** An event with what the log knows beside it. */
export type UnitEvent = {
  event: LoggedEvent;
  isVoided: boolean;
  voidedBy: string | null;
  recordedAtUs: number;
  recordedBy: string;
  flags: unknown[];
};

const metaSchema = z.object({
  void: z.string().nullable(),
  recorded_at: z.number(),
  recorded_by: z.string(),
  flags: z.array(z.unknown()).nullable(),
});

/**
 * Every event that names a unit, voided ones too, in order: as its subject, as the other unit of a joining, separation
 * or salvage, or as the target of a hold or a label; by event_of_unit, event_of_other_unit and event_of_target.
 */
export async function findUnitEvents(db: Queryable, unit: string): Promise<UnitEvent[]> {
  const { rows } = await db.query(
    `select ${EVENT_COLUMNS}, e.recorded_at, e.recorded_by, f.flags,
       (select v.void from read.voided v where v.event = e.id and e.type <> 'event.voided' order by v.void limit 1) as void
     from log.event e
     left join read.flagged f on f.event = e.id
     where e.unit = $1
       or (e.type in ('unit.joined', 'unit.separated', 'part.installed')
           and (coalesce(e.body ->> 'into', e.body ->> 'from', e.body ->> 'fromUnit')) collate "C" = $1)
       or (e.type in ('hold.placed', 'label.printed') and (e.body -> 'target' ->> 'kind') collate "C" = 'unit'
           and (e.body -> 'target' ->> 'id') collate "C" = $1)
     order by e.at, e.id`,
    [unit],
  );
  return rows.map((row) => {
    const {
      void: voidedBy,
      recorded_at: recordedAtUs,
      recorded_by: recordedBy,
      flags,
    } = metaSchema.parse(row);
    const event = readEventRow(row);
    return { event, isVoided: voidedBy !== null, voidedBy, recordedAtUs, recordedBy, flags: flags ?? [] };
  });
}
