import { z } from 'zod';
import type { DoubtChoice } from '@/lib/data/balance/find-doubt-windows';
import type { Queryable } from '@/lib/data/pool';
import { prepareWhereUsed } from '@/lib/data/trace/prepare-where-used';
import { certaintySchema, relationSchema } from '@/lib/domain/genealogy/answer';
import type { Standings } from '@/lib/domain/genealogy/difference';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

const rowSchema = z.object({ unit: z.string(), certainty: certaintySchema, relation: relationSchema });

/** How every unit of an answer stands in it; cost: that of the answer, less its places. */
export async function findStandings(
  db: Queryable,
  question: WhereUsedQuestion,
  choice: DoubtChoice,
): Promise<Standings> {
  const { text, values } = await prepareWhereUsed(db, question, choice);
  const { rows } = await db.query(`${text} select unit, certainty, relation from answer`, values);
  return new Map(
    rows.map((row) => {
      const { unit, ...standing } = rowSchema.parse(row);
      return [unit, standing];
    }),
  );
}
