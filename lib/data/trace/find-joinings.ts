import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

/** A stay of a unit in another one, as events tell it; `until` is null while it lasts. */
export type Joining = {
  inner: string;
  outer: string;
  position: string;
  at: string;
  by: string;
  until: string | null;
  endedBy: string | null;
};

const rowSchema = z.object({
  inner: z.string(),
  outer: z.string(),
  position: z.string(),
  at: z.string(),
  by: z.string(),
  until: z.string().nullable(),
  ended_by: z.string().nullable(),
});

/** Stays that a unit takes part in on one side, in order. */
export async function findJoinings(
  db: Queryable,
  options: { unit: string; side: 'inner_unit' | 'outer_unit' },
): Promise<Joining[]> {
  const { rows } = await db.query(
    `select j.inner_unit as inner, j.outer_unit as outer, j.position, e.at_sent as at, j.event as by,
       s.at_sent as until, s.id as ended_by
     from read.joining j
     join log.event e on e.id = j.event
     left join log.event s on s.id = j.to_event
     where j.${options.side} = $1
     order by j.at, j.event`,
    [options.unit],
  );
  return rows.map((row) => {
    const { ended_by: endedBy, ...joining } = rowSchema.parse(row);
    return { ...joining, endedBy };
  });
}
