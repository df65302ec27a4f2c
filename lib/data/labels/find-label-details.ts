import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const unitRow = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
});
const itemRow = z.object({ item: z.string(), part: z.string().nullable(), lot: z.string().nullable() });

/** Product and revision of started units, by their primary key. */
export async function findUnitProducts(
  db: Queryable,
  units: readonly string[],
): Promise<Map<string, z.infer<typeof unitRow>>> {
  const { rows } = await db.query(
    'select unit, product, revision from read.unit where unit = any($1::text[])',
    [units],
  );
  return new Map(rows.map((row) => unitRow.parse(row)).map((row) => [row.unit, row]));
}

/** Part and lot of received items, by their primary key. */
export async function findItemParts(
  db: Queryable,
  items: readonly string[],
): Promise<Map<string, z.infer<typeof itemRow>>> {
  const { rows } = await db.query('select item, part, lot from read.item where item = any($1::text[])', [
    items,
  ]);
  return new Map(rows.map((row) => itemRow.parse(row)).map((row) => [row.item, row]));
}
