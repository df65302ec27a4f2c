import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { type Hold, readHold } from '@/lib/data/trace/find-holds';

const countSchema = z.object({ open: z.number() });

/** Open holds: how many, and the newest of them, newest first; by hold_open. */
export async function findOpenHolds(
  db: Queryable,
  countMax: number,
): Promise<{ open: number; newest: Hold[] }> {
  const counted = await db.query(`select count(*) as open from read.hold where released_at = 'infinity'`);
  const { rows } = await db.query(
    `select * from read.hold where released_at = 'infinity' order by placed_at desc, hold desc limit $1`,
    [countMax],
  );
  return { open: countSchema.parse(counted.rows[0]).open, newest: rows.map(readHold) };
}
