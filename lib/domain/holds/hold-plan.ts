import { z } from 'zod';
import { codeSchema, statementSchema } from '@/lib/domain/codes';
import { eventIdSchema } from '@/lib/domain/events/vocabulary';
import { conditionsSchema } from '@/lib/domain/genealogy/narrow-question';
import { instantSchema } from '@/lib/domain/time';

/** Most units that are put on hold at a time. */
export const HOLDS_MAX = 500;
/** Most holds of a plan that are recorded at once, so that progress is seen. */
export const HOLDS_AT_ONCE_MAX = 25;

/** Whom to hold of a narrowed answer, and why. */
export const holdWishSchema = z.strictObject({
  conditions: conditionsSchema,
  group: z.enum(['certain', 'both']),
  reason: statementSchema,
});
export type HoldWish = z.infer<typeof holdWishSchema>;

const plannedHoldSchema = z.strictObject({ id: eventIdSchema, unit: codeSchema });

/** A part of a plan, as it is recorded; the same part sent again records nothing twice. */
export const holdBatchSchema = z.strictObject({
  at: instantSchema,
  reason: statementSchema,
  holds: z.array(plannedHoldSchema).min(1).max(HOLDS_AT_ONCE_MAX),
});
export type HoldBatch = z.infer<typeof holdBatchSchema>;

/** Holds to place, each with its id made once; `rest` more units come with the next plan. */
export type HoldPlan = { at: string; holds: HoldBatch['holds']; rest: number };
