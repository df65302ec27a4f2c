import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({ unit: z.string() });

/**
 * Which of some units a person's open hold of the same reason stops already; holds of the given ids do not count, and
 * neither do automatic ones, which go by themselves with their cause. Direction: hold_open by unit. Bound: the units.
 */
export async function findHeldFor(
  db: Queryable,
  { units, reason, except }: { units: readonly string[]; reason: string; except: readonly string[] },
): Promise<Set<string>> {
  const { rows } = await db.query(
    `select distinct h.target as unit from read.hold h
     where h.target_kind = 'unit' and h.target = any($1::text[]) and h.released_at = 'infinity'
       and h.reason = $2::text and not h.is_automatic and h.hold <> all($3::uuid[])`,
    [units, reason, except],
  );
  return new Set(rows.map((row) => rowSchema.parse(row).unit));
}
