import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({ kind: z.enum(['item', 'lot']), id: z.string(), reason: z.string() });

/** Items and lots that are on hold now, by hold_open; a plant has some dozens. The first hold of each speaks for it. */
export async function findHeldMaterial(db: Queryable): Promise<z.infer<typeof rowSchema>[]> {
  const { rows } = await db.query(
    `select distinct on (target_kind, target) target_kind as kind, target as id, reason
     from read.hold where released_at = 'infinity' and target_kind in ('item', 'lot')
     order by target_kind, target, placed_at, hold`,
  );
  return z.array(rowSchema).parse(rows);
}
