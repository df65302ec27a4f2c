import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({ item: z.string(), part: z.string() });

/** What is wanted of reels: by their codes, or all of some parts. */
export type ReelsWanted = { items: readonly string[] } | { parts: readonly string[] };

/** Most reels of a part that are weighed together; the newest codes are kept. */
const REELS_MAX = 2000;

/** The parts of reels, by code; reels without a part are left out. By the key or by item_by_part. */
export async function findReels(db: Queryable, wanted: ReelsWanted): Promise<Map<string, string>> {
  const [where, values] = 'items' in wanted ? ['item', wanted.items] : ['part', wanted.parts];
  const { rows } = await db.query(
    `select item, part from read.item where ${where} = any($1) and part is not null
     order by item desc limit ${REELS_MAX}`,
    [values],
  );
  return new Map(rows.map((row) => rowSchema.parse(row)).map(({ item, part }) => [item, part]));
}
