import type { Certainty } from '@/lib/domain/genealogy/answer';
import { type NarrowAnswer, narrowAnswerSchema } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';

/** A page of a narrowed answer from the API; throws when there is none. */
export async function fetchNarrowed(question: {
  conditions: readonly Condition[];
  certainty?: Certainty;
  limit: number;
  cursor: string | null;
}): Promise<NarrowAnswer> {
  const { cursor, ...rest } = question;
  const response = await fetch('/api/trace/narrow', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(cursor === null ? rest : { ...rest, cursor }),
  });
  if (!response.ok) throw new Error(`A page of the answer was answered with ${response.status}.`);
  return narrowAnswerSchema.parse(await response.json());
}
