import type { Difference } from '@/lib/domain/genealogy/difference';
import type { DifferenceQuestion } from '@/lib/domain/genealogy/question';
import { answerSince } from '@/lib/server/answer-since';
import { differenceCsv } from '@/lib/server/difference-csv';
import { csvName } from '@/lib/server/http/csv-name';
import { csvResponse } from '@/lib/server/http/csv-response';
import { ProblemError } from '@/lib/server/http/problem';

/** The difference of an answer; throws a problem (409) when too many units would have to be compared. */
export async function differenceOf(question: DifferenceQuestion): Promise<Difference> {
  const compared = await answerSince(question);
  if (compared.ok) return compared.difference;
  const { units, max } = compared.refusal;
  throw new ProblemError('conflict', {
    detail: `To compare this answer, ${units} units would have to be looked at; ${max} are possible. Ask for one item instead of a lot or a part, or compare two answers that you have kept.`,
  });
}

/** The same as a file with every change. */
export async function differenceFile(question: DifferenceQuestion): Promise<Response> {
  const difference = await differenceOf({ ...question, limit: Number.POSITIVE_INFINITY });
  return csvResponse(differenceCsv(difference), csvName(question, new Date(), 'difference'));
}
