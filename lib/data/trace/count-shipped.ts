import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { prepareWhereUsed } from '@/lib/data/trace/prepare-where-used';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import type { ShippedCount } from '@/lib/domain/genealogy/trace-answer';

const rowSchema = z.object({
  customer: z.string(),
  shipment: z.string(),
  certain: z.number(),
  possible: z.number(),
});

/** The shipped units of an answer by customer and shipment, in their order; cost: that of the answer. */
export async function countShipped(db: Queryable, question: WhereUsedQuestion): Promise<ShippedCount[]> {
  const { text, values } = await prepareWhereUsed(db, question);
  const { rows } = await db.query(
    `${text}
select customer, shipment, count(*) filter (where certainty = 'certain') as certain,
  count(*) filter (where certainty = 'possible') as possible
from answer where place = 'shipped'
group by customer, shipment
order by customer collate "C", shipment collate "C"`,
    values,
  );
  return rows.map((row) => rowSchema.parse(row));
}
