import { z } from 'zod';
import { resultSchema } from '@/lib/domain/events/vocabulary';

const stepRecordSchema = z.object({
  last: resultSchema,
  /** Results since the step was last passed; 0 right after a pass. */
  tries: z.int(),
});

/** What is known of a unit from its own events, in order; stored beside the unit and folded again when history changes. */
export const unitStateSchema = z.object({
  product: z.string().nullable(),
  revision: z.string().nullable(),
  isStarted: z.boolean(),
  /** By step number, or by `~operation` for work off the route. */
  steps: z.record(z.string(), stepRecordSchema),
  lastStation: z.string().nullable(),
  placing: z.enum(['station', 'container', 'stock', 'returned']).nullable(),
  container: z.string().nullable(),
  /** Whether a sign-off counts: one was given, and the unit was not returned since. */
  isSigned: z.boolean(),
  isScrapped: z.boolean(),
  /** Ids of failing results that used up the attempts of their step; each of them is a hold. */
  exhausted: z.array(z.string()),
});

export type UnitState = z.infer<typeof unitStateSchema>;

/** A unit of which nothing is known yet. */
export const UNSEEN_UNIT: UnitState = {
  product: null,
  revision: null,
  isStarted: false,
  steps: {},
  lastStation: null,
  placing: null,
  container: null,
  isSigned: false,
  isScrapped: false,
  exhausted: [],
};
