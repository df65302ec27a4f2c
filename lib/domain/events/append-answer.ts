import { z } from 'zod';
import { refusalSchema } from '@/lib/domain/gate/question';
import type { Refusal } from '@/lib/domain/gate/refusals';

const resultSchema = z.object({
  id: z.string().nullable(),
  outcome: z.enum(['recorded', 'already_recorded', 'refused']),
  refusal: refusalSchema.extend({ also: z.array(refusalSchema).optional() }).optional(),
  flags: z.array(refusalSchema).optional(),
});

/** The server's answer to appended events, one result an event, in order. */
export const appendAnswerSchema = z.object({ results: z.array(resultSchema) });

/** What became of one event. */
export type AppendResult = z.infer<typeof resultSchema>;

/** Every reason of a refusal in order of precedence; null for an event that is in the log. */
export function refusalReasons({ outcome, refusal }: AppendResult): Refusal[] | null {
  if (outcome !== 'refused') return null;
  if (refusal === undefined) return [];
  const { also = [], ...first } = refusal;
  return [first, ...also];
}
