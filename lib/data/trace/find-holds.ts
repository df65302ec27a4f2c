import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { Queryable } from '@/lib/data/pool';
import type { HoldTargetKind } from '@/lib/domain/events/vocabulary';
import { formatInstant } from '@/lib/domain/time';

/** A hold as answers and screens show it; `releasedBy` is null while it is open. */
export type Hold = {
  hold: string;
  kind: string;
  id: string;
  reason: string;
  automatic: boolean;
  at: string;
  releasedAt: string | null;
  releasedBy: string | null;
  disposition: string | null;
};

const rowSchema = z.object({
  hold: z.string(),
  target_kind: z.string(),
  target: z.string(),
  reason: z.string(),
  is_automatic: z.boolean(),
  placed_at: z.number(),
  released_at: openInstantColumn,
  released_by: z.string().nullable(),
  disposition: z.string().nullable(),
});

/** Reads a row of read.hold. */
export function readHold(row: unknown): Hold {
  const {
    hold,
    target_kind,
    target,
    reason,
    is_automatic,
    placed_at,
    released_at,
    released_by,
    disposition,
  } = rowSchema.parse(row);
  return {
    hold,
    kind: target_kind,
    id: target,
    reason,
    automatic: is_automatic,
    at: formatInstant(placed_at),
    releasedAt: released_at === Number.POSITIVE_INFINITY ? null : formatInstant(released_at),
    releasedBy: released_by,
    disposition,
  };
}

/** All holds on a target, open and released, in order of placing. */
export async function findHolds(db: Queryable, kind: HoldTargetKind, id: string): Promise<Hold[]> {
  const { rows } = await db.query(
    'select * from read.hold where target_kind = $1 and target = $2 order by placed_at, hold',
    [kind, id],
  );
  return rows.map(readHold);
}
