import { z } from 'zod';
import { holdTargetKindSchema } from '@/lib/domain/events/vocabulary';
import { refusalSchema } from '@/lib/domain/gate/question';

/** A hold that nobody has released yet. */
export const openHoldEntrySchema = z.object({
  hold: z.string(),
  kind: holdTargetKindSchema,
  id: z.string(),
  /** Free text, or for an automatic hold the codes of what was wrong, with commas. */
  reason: z.string(),
  automatic: z.boolean(),
  at: z.string(),
  /** Of an automatic hold: what the gate found, with its facts; empty when attempts ran out. */
  because: z.array(refusalSchema),
  /** Badge of who placed it, or did what placed it. */
  placedBy: z.string().nullable(),
});
export type OpenHoldEntry = z.infer<typeof openHoldEntrySchema>;

/** The longest-standing open holds, and how many there are in all. */
export const openHoldListSchema = z.object({ holds: z.array(openHoldEntrySchema), total: z.int() });
export type OpenHoldList = z.infer<typeof openHoldListSchema>;
