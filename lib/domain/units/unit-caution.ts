import { z } from 'zod';

/** Something that does not stop a unit, but that whoever lets it go must know. */
export const unitCautionSchema = z.discriminatedUnion('what', [
  /** A sub-assembly that should be in it by now. */
  z.object({ what: z.literal('missing_inner'), product: z.string(), position: z.string() }),
  /** A part was removed and none was fitted. */
  z.object({ what: z.literal('empty_position'), position: z.string() }),
  /** An item or lot on hold of which something is in it, or in a unit inside it. */
  z.object({
    what: z.literal('held_inside'),
    kind: z.enum(['item', 'lot']),
    id: z.string(),
    reason: z.string(),
  }),
]);
export type UnitCaution = z.infer<typeof unitCautionSchema>;
