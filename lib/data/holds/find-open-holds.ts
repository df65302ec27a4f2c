import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { holdTargetKindSchema } from '@/lib/domain/events/vocabulary';
import { refusalSchema } from '@/lib/domain/gate/question';
import type { OpenHoldList } from '@/lib/domain/holds/open-hold-list';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  hold: z.string(),
  kind: holdTargetKindSchema,
  id: z.string(),
  reason: z.string(),
  automatic: z.boolean(),
  at: z.number(),
  placed_by: z.string().nullable(),
  because: z.array(refusalSchema).nullable(),
  total: z.number(),
});

/**
 * Open holds, oldest first, at most `count`, with the number of all of them. Direction: hold_open → the event that
 * placed each, by id.
 */
export async function findOpenHolds(db: Queryable, count: number): Promise<OpenHoldList> {
  const { rows } = await db.query(
    `select h.hold, h.target_kind as kind, h.target as id, h.reason, h.is_automatic as automatic, h.placed_at as at,
       e.operator as placed_by, case when h.is_automatic then f.flags end as because, count(*) over ()::integer as total
     from read.hold h left join log.event e on e.id = h.hold
     left join read.flagged f on f.event = h.hold
     where h.released_at = 'infinity'
     order by h.placed_at, h.hold
     limit $1`,
    [count],
  );
  const found = rows.map((row) => rowSchema.parse(row));
  return {
    total: found[0]?.total ?? 0,
    holds: found.map(({ placed_by: placedBy, because, total: _, at, ...hold }) => ({
      ...hold,
      at: formatInstant(at),
      because: because ?? [],
      placedBy,
    })),
  };
}
