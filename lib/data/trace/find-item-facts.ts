import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';

const rowSchema = z.object({
  item: z.string(),
  kind: itemKindSchema,
  part: z.string().nullable(),
  lot: z.string().nullable(),
});

/** What is known of an item that was received. */
export type ItemFacts = Omit<z.infer<typeof rowSchema>, 'item'>;

/** Kind, part and lot of items; one that was never received is absent. One row each by the primary key. */
export async function findItemFacts(
  db: Queryable,
  items: readonly string[],
): Promise<Map<string, ItemFacts>> {
  const { rows } = await db.query(
    'select item, kind, part, lot from read.item where item = any($1::text[])',
    [items],
  );
  return new Map(
    rows.map((row) => {
      const { item, ...facts } = rowSchema.parse(row);
      return [item, facts];
    }),
  );
}
