import { type DoubtChoice, findDoubtWindows } from '@/lib/data/balance/find-doubt-windows';
import type { Queryable } from '@/lib/data/pool';
import { type Statement, whereUsedStatement } from '@/lib/data/trace/where-used-sql';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

/** The statement of a where-used question, with the windows in which the record itself is in doubt. */
export async function prepareWhereUsed(
  db: Queryable,
  question: WhereUsedQuestion,
  choice: DoubtChoice = {},
): Promise<Statement> {
  return whereUsedStatement(question, await findDoubtWindows(db, question, choice));
}
