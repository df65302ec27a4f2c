import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { EVENT_TYPES } from '@/lib/domain/events/catalogue';
import {
  EXCEPTIONS_MAX,
  type ExceptionEntry,
  type ExceptionList,
} from '@/lib/domain/exceptions/exception-list';
import { refusalSchema } from '@/lib/domain/gate/question';
import { formatInstant } from '@/lib/domain/time';

const CLEARED_COUNT = 20;

const rowSchema = z.object({
  event: z.string(),
  type: z.enum(EVENT_TYPES),
  unit: z.string().nullable(),
  item: z.string().nullable(),
  station: z.string().nullable(),
  operator: z.string().nullable(),
  device: z.string().nullable(),
  at: z.number(),
  recorded_at: z.number(),
  flags: z.array(refusalSchema),
  is_holding: z.boolean(),
  clearing: z.string().nullable(),
  cleared_at: z.number().nullable(),
  cleared_by: z.string().nullable(),
  reason: z.string().nullable(),
});
const countSchema = z.object({ count: z.number() });

const SELECTED = `e.id as event, e.type, e.unit, e.body ->> 'item' as item, e.station, e.operator, e.device, e.at,
  e.recorded_at, f.flags, c.id as clearing, c.at as cleared_at, coalesce(c.operator, c.recorded_by) as cleared_by,
  c.body ->> 'reason' as reason,
  exists (select from read.hold h where h.hold = e.id and h.released_at = 'infinity') as is_holding`;

/**
 * Events recorded against a rule: the open ones as they came, then those cleared last. Direction: flagged → event by id,
 * with the clearing of each by event_clearing.
 */
export async function findExceptions(db: Queryable): Promise<ExceptionList> {
  const open = await db.query(
    `select ${SELECTED} from read.flagged f
     join log.event e on e.id = f.event
     left join log.event c on false
     where not exists (select from read.clearing_of(f.event))
     order by e.position limit $1`,
    [EXCEPTIONS_MAX],
  );
  const cleared = await db.query(
    `select ${SELECTED} from log.event c
     join read.flagged f on f.event = (c.body ->> 'event')::uuid
     join log.event e on e.id = f.event
     where c.type = 'exception.cleared' and c.id = (select clearing from read.clearing_of(f.event))
     order by c.position desc limit $1`,
    [CLEARED_COUNT],
  );
  return {
    total: await countExceptions(db),
    open: open.rows.map(entryOf),
    cleared: cleared.rows.map(entryOf),
  };
}

/** How many are open. */
export async function countExceptions(db: Queryable): Promise<number> {
  const { rows } = await db.query(
    `select count(*)::integer as count from read.flagged f
     where not exists (select from read.clearing_of(f.event))`,
  );
  return countSchema.parse(rows[0]).count;
}

function entryOf(row: unknown): ExceptionEntry {
  const { at, recorded_at, clearing, cleared_at, cleared_by, reason, is_holding, ...entry } =
    rowSchema.parse(row);
  return {
    ...entry,
    at: formatInstant(at),
    recordedAt: formatInstant(recorded_at),
    isHolding: is_holding,
    cleared:
      clearing === null || cleared_at === null
        ? null
        : { event: clearing, at: formatInstant(cleared_at), by: cleared_by, reason: reason ?? '' },
  };
}
