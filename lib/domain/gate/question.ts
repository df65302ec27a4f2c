import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { REFUSAL_CODES, type Refusal } from '@/lib/domain/gate/refusals';
import { instantSchema } from '@/lib/domain/time';

/** May this unit be worked on at this station, by this person, now or at a moment? */
export const checkQuestionSchema = z.strictObject({
  unit: codeSchema,
  station: codeSchema,
  operator: codeSchema.optional(),
  at: instantSchema.optional(),
});
export type CheckQuestion = z.infer<typeof checkQuestionSchema>;

/** A reason with the facts that its words need. */
export const refusalSchema = z.looseObject({ code: z.enum(REFUSAL_CODES) });

/** Go or no-go, every reason in order of precedence, and the step that the unit owes next. */
export const checkAnswerSchema = z.object({
  go: z.boolean(),
  reasons: z.array(refusalSchema),
  next: z.object({ operation: z.string(), step: z.int() }).nullable(),
});
export type CheckAnswer = z.infer<typeof checkAnswerSchema>;

/**
 * That an answer was given without the server: by what was known at `asOfMs` (milliseconds since the epoch), with the
 * rules that could not be decided by it.
 */
export type Provisional = { asOfMs: number; undecided: Refusal[] };

/** An answer of the server, or a tablet's own. */
export type Verdict = CheckAnswer & { provisional?: Provisional };
