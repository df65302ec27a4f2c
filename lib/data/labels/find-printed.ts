import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { LabelKind } from '@/lib/domain/events/vocabulary';

const rowSchema = z.object({ code: z.string(), times: z.number() });

/** Which of these codes have labels already, and how many times they were printed; by label_print_of. */
export async function findPrinted(
  db: Queryable,
  kind: LabelKind,
  codes: readonly string[],
): Promise<Map<string, number>> {
  const { rows } = await db.query(
    `select code, count(*)::integer as times from read.label_print
     where kind = $1 and code = any($2::text[]) group by code order by code`,
    [kind, codes],
  );
  return new Map(rows.map((row) => rowSchema.parse(row)).map(({ code, times }) => [code, times]));
}
