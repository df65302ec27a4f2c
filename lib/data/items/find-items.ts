import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { itemKindSchema, resultSchema } from '@/lib/domain/events/vocabulary';

const itemRowSchema = z.object({
  item: z.string(),
  kind: itemKindSchema,
  part: z.string().nullable(),
  lot: z.string().nullable(),
  supplier: z.string().nullable(),
  quantity: z.number().nullable(),
  counted_at: z.number().nullable(),
  inspected: resultSchema.nullable(),
  is_retired: z.boolean(),
});

/** An item that was received, as its own events leave it. */
export type ItemRow = Omit<z.infer<typeof itemRowSchema>, 'counted_at' | 'is_retired'> & {
  countedAtUs: number | null;
  isRetired: boolean;
};

function readItem(row: unknown): ItemRow {
  const { counted_at: countedAtUs, is_retired: isRetired, ...item } = itemRowSchema.parse(row);
  return { ...item, countedAtUs, isRetired };
}

/** One item by its code, or null when it was never received. */
export async function findItem(db: Queryable, item: string): Promise<ItemRow | null> {
  const { rows } = await db.query('select * from read.item where item = $1', [item]);
  return rows[0] === undefined ? null : readItem(rows[0]);
}

/** Codes of the items of a part, those received last first as far as their codes tell, and how many there are; by item_by_part. */
export async function findItemsOfPart(
  db: Queryable,
  part: string,
  countMax: number,
): Promise<{ items: string[]; count: number }> {
  const { rows } = await db.query(
    `select item, count(*) over ()::integer as count from read.item where part = $1 order by item desc limit $2`,
    [part, countMax],
  );
  const found = rows.map((row) => z.object({ item: z.string(), count: z.number() }).parse(row));
  return { items: found.map(({ item }) => item), count: found[0]?.count ?? 0 };
}

/** Items received with a lot, by code; by item_by_lot, at most `countMax`. */
export async function findItemsOfLot(db: Queryable, lot: string, countMax: number): Promise<ItemRow[]> {
  const { rows } = await db.query('select * from read.item where lot = $1 order by item limit $2', [
    lot,
    countMax,
  ]);
  return rows.map(readItem);
}
