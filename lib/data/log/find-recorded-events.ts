import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import type { Queryable } from '@/lib/data/pool';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import { refusalSchema } from '@/lib/domain/gate/question';
import { formatInstant } from '@/lib/domain/time';

const EVENTS_MAX = 5000;

const metaSchema = z.object({
  recorded_at: z.number(),
  recorded_by: z.string(),
  flags: z.array(refusalSchema).nullable(),
  void_id: z.string().nullable(),
  void_at: z.string().nullable(),
  void_by: z.string().nullable(),
  void_reason: z.string().nullable(),
});

const voidSchema = z.object({ id: z.string(), at: z.string(), by: z.string(), reason: z.string() });

/** The newest 5,000 events at the positions that a subquery gives, in order, voided ones with who voided them. */
async function select(db: Queryable, positions: string, values: unknown[]): Promise<RecordedEvent[]> {
  const { rows } = await db.query(
    `select * from (
       select ${EVENT_COLUMNS}, e.at, e.recorded_at, e.recorded_by, f.flags,
         v.id as void_id, v.at_sent as void_at, v.by as void_by, v.reason as void_reason
       from log.event e
       left join read.flagged f on f.event = e.id
       left join lateral (
         select w.id, w.at_sent, coalesce(w.operator, w.recorded_by) as by, w.body ->> 'reason' as reason
         from read.voided x
         join log.event w on w.id = x.void
         where x.event = e.id and e.type <> 'event.voided'
         order by x.void limit 1
       ) v on true
       where e.position in (${positions})
       order by e.at desc, e.id desc limit ${EVENTS_MAX}
     ) newest order by at, id`,
    values,
  );
  return rows.map(readRecorded);
}

function readRecorded(row: unknown): RecordedEvent {
  const { recorded_at, recorded_by, flags, void_id, void_at, void_by, void_reason } = metaSchema.parse(row);
  const { atUs: _, ...event } = readEventRow(row);
  const voidedBy =
    void_id && voidSchema.parse({ id: void_id, at: void_at, by: void_by, reason: void_reason });
  return {
    event,
    recordedAt: formatInstant(recorded_at),
    recordedBy: recorded_by,
    voidedBy: voidedBy || null,
    flags: flags ?? [],
  };
}

/** Holds on a target and their releases; by event_of_target and event_of_hold. */
const HOLDS_AND_RELEASES = `
  select h.position from log.event h
  where h.type = 'hold.placed' and (h.body -> 'target' ->> 'kind') collate "C" = $2
    and (h.body -> 'target' ->> 'id') collate "C" = $1
  union
  select r.position from log.event h
  join log.event r on r.type = 'hold.released' and r.body ->> 'hold' = h.id::text
  where h.type = 'hold.placed' and (h.body -> 'target' ->> 'kind') collate "C" = $2
    and (h.body -> 'target' ->> 'id') collate "C" = $1`;

/** The releases of holds, those of the gate too, and the clearings of what it flagged; by event_of_hold and event_clearing. */
export function findReleases(db: Queryable, holds: readonly string[]): Promise<RecordedEvent[]> {
  return select(
    db,
    `select position from log.event where type = 'hold.released' and body ->> 'hold' = any($1::text[])
     union
     select position from log.event where type = 'exception.cleared' and body ->> 'event' = any($1::text[])`,
    [holds],
  );
}

/** An item's own life and the holds on it; by event_of_item. */
export function findItemRecord(db: Queryable, item: string): Promise<RecordedEvent[]> {
  return select(
    db,
    `select position from log.event where (body ->> 'item') collate "C" = $1 and type like 'item.%'
     union
     ${HOLDS_AND_RELEASES}`,
    [item, 'item'],
  );
}

/** What went into and out of a container, its own nesting and shipping, and the holds on it; by event_of_container. */
export function findContainerRecord(db: Queryable, container: string): Promise<RecordedEvent[]> {
  return select(
    db,
    `select position from log.event
     where (body ->> 'container') collate "C" = $1
       and (type like 'container.%' or type in ('unit.packed', 'unit.unpacked'))
     union
     ${HOLDS_AND_RELEASES}`,
    [container, 'container'],
  );
}
