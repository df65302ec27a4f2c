import { type WhereUsedAnswer, whereUsedAnswerSchema } from '@/lib/domain/genealogy/answer';
import { type TraceQuestion, traceQuery } from '@/lib/ui/trace/trace-address';

/** A page of a where-used answer from the API; throws when there is none. */
export async function fetchUsed(
  question: TraceQuestion,
  { limit, cursor }: { limit: number; cursor: string | null },
): Promise<WhereUsedAnswer> {
  const parameters = new URLSearchParams(traceQuery(question));
  parameters.set('limit', String(limit));
  if (cursor !== null) parameters.set('cursor', cursor);
  const response = await fetch(`/api/trace/where-used?${parameters}`);
  if (!response.ok) throw new Error(`A page of the answer was answered with ${response.status}.`);
  return whereUsedAnswerSchema.parse(await response.json());
}
