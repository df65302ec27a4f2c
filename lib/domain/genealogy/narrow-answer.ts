import { z } from 'zod';
import { certaintySchema, completenessSchema, DOUBTS, placeSchema } from '@/lib/domain/genealogy/answer';
import { conditionSchema } from '@/lib/domain/genealogy/narrow-question';

/**
 * Why a condition leaves a unit only possible: the doubts of where-used, `inner` (a unit inside it meets what it must
 * not, which may not be the one that meets the rest) and `unstarted` (what it is was never recorded).
 */
export const NARROW_DOUBTS = [...DOUBTS, 'inner', 'unstarted'] as const;
export const narrowDoubtSchema = z.enum(NARROW_DOUBTS);
export type NarrowDoubt = z.infer<typeof narrowDoubtSchema>;

const countSchema = z.number().int().min(0);
const groupCountsSchema = z.object({ certain: countSchema, possible: countSchema });

const conditionAnswerSchema = z.object({
  condition: conditionSchema,
  own: groupCountsSchema.meta({ description: 'Units that meet what it says, whatever the others say.' }),
  after: groupCountsSchema.nullable().meta({ description: 'Units left by it and by those before it.' }),
  removed: countSchema.nullable().meta({ description: 'Units that it certainly rules out.' }),
  spared: countSchema.meta({ description: 'Units that it would remove if possible were enough; they stay.' }),
});
export type ConditionAnswer = z.infer<typeof conditionAnswerSchema>;

/** One unit of a narrowed answer; `doubts` names the conditions, from 0, about which the record cannot decide. */
export const narrowedUnitSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  certainty: certaintySchema,
  place: placeSchema,
  isHeld: z.boolean().meta({ description: 'Whether a hold on the unit itself is open.' }),
  doubts: z.array(z.object({ condition: countSchema, because: z.array(narrowDoubtSchema) })),
});
export type NarrowedUnit = z.infer<typeof narrowedUnitSchema>;

const byPlaceSchema = z.object({
  station: countSchema,
  stock: countSchema,
  container: countSchema,
  shipped: countSchema,
  returned: countSchema,
  scrapped: countSchema,
});

const groupSchema = z.object({ units: countSchema, held: countSchema, byPlace: byPlaceSchema });
export type NarrowedGroup = z.infer<typeof groupSchema>;

/** The smallest set of units that the conditions and the record can defend. */
export const narrowAnswerSchema = completenessSchema.extend({
  conditions: z.array(conditionAnswerSchema),
  counts: z.object({ certain: groupSchema, possible: groupSchema }),
  units: z.array(narrowedUnitSchema),
  next: z.string().nullable().meta({ description: 'Cursor of the next page, or null.' }),
});
export type NarrowAnswer = z.infer<typeof narrowAnswerSchema>;
