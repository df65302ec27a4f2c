import { z } from 'zod';
import { codeSchema, textSchema } from '@/lib/domain/codes';
import { resultSchema } from '@/lib/domain/events/vocabulary';
import { certaintySchema, placeKindSchema } from '@/lib/domain/genealogy/answer';
import { PAGE_MAX } from '@/lib/domain/genealogy/question';
import { instantSchema } from '@/lib/domain/time';

/** Most conditions of one question. */
export const CONDITIONS_MAX = 12;
const PAGE_DEFAULT = 500;

const must = z.boolean().meta({ description: 'True: the unit must meet it. False: it must not.' });
const time = { from: instantSchema.optional(), to: instantSchema.optional() };
const where = { station: codeSchema.optional(), operation: codeSchema.optional() };

/** A check that at least one of some keys is given, since a condition that says nothing narrows nothing. */
function oneOf<T extends object>(...names: (keyof T & string)[]) {
  return {
    test: (value: T) => names.some((name) => value[name] !== undefined),
    says: { error: `Give at least one of ${names.join(', ')}.`, params: { code: 'no_condition' } },
  };
}

const used = z.strictObject({
  must,
  kind: z.literal('used'),
  item: codeSchema.optional(),
  lot: codeSchema.optional(),
  part: codeSchema.optional(),
  station: codeSchema.optional(),
  operator: codeSchema.optional(),
  ...time,
});
const needsMaterial = oneOf<z.infer<typeof used>>('item', 'lot', 'part');

const processed = z.strictObject({
  must,
  kind: z.literal('processed'),
  ...where,
  operator: codeSchema.optional(),
  result: resultSchema.optional(),
  ...time,
});
const needsWork = oneOf<z.infer<typeof processed>>('station', 'operation', 'operator', 'from', 'to');

const defect = z.strictObject({
  must,
  kind: z.literal('defect'),
  code: codeSchema.optional(),
  position: codeSchema.optional(),
  ...where,
  ...time,
});
const needsDefect = oneOf<z.infer<typeof defect>>('code', 'position');

const repaired = z.strictObject({
  must,
  kind: z.literal('repaired'),
  position: codeSchema.optional(),
  change: z.enum(['removed', 'installed']).optional().meta({ description: 'Omitted: either of them.' }),
  ...time,
});

const product = z.strictObject({
  must,
  kind: z.literal('product'),
  product: codeSchema,
  revision: codeSchema.optional(),
});

const started = z.strictObject({
  must,
  kind: z.literal('started'),
  boardLot: codeSchema.optional(),
  order: codeSchema.optional(),
  panel: codeSchema.optional(),
});
const needsStart = oneOf<z.infer<typeof started>>('boardLot', 'order', 'panel');

const place = z.strictObject({
  must,
  kind: z.literal('place'),
  place: placeKindSchema,
  station: codeSchema.optional().meta({ description: 'With the place `station` only.' }),
});

const packed = z.strictObject({
  must,
  kind: z.literal('packed'),
  container: codeSchema.optional(),
  shipment: codeSchema.optional(),
  customer: textSchema.optional(),
});
const needsPacking = oneOf<z.infer<typeof packed>>('container', 'shipment', 'customer');

/**
 * One condition of a narrowing. What happened (`used`, `processed`, `defect`, `repaired`, `started`) is told of a unit
 * and of the units that hold it; what a unit is and where it is now (`product`, `place`, `packed`) of itself.
 */
export const conditionSchema = z.discriminatedUnion('kind', [
  used.refine(needsMaterial.test, needsMaterial.says),
  processed.refine(needsWork.test, needsWork.says),
  defect.refine(needsDefect.test, needsDefect.says),
  repaired,
  product,
  started.refine(needsStart.test, needsStart.says),
  place.refine(({ place: kind, station }) => kind === 'station' || station === undefined, {
    error: 'A station goes with the place `station` only.',
    path: ['station'],
    params: { code: 'no_station_there' },
  }),
  packed.refine(needsPacking.test, needsPacking.says),
]);

export type Condition = z.infer<typeof conditionSchema>;
export type ConditionKind = Condition['kind'];
export type ConditionOf<K extends ConditionKind> = Extract<Condition, { kind: K }>;

/** The conditions of one question; at least one must, or the answer would be the whole plant less a few. */
const conditionsSchema = z
  .array(conditionSchema)
  .min(1)
  .max(CONDITIONS_MAX)
  .refine((conditions) => conditions.some((condition) => condition.must), {
    error: 'At least one condition must say what the units must have in common.',
    params: { code: 'no_must' },
  });

const page = {
  certainty: certaintySchema
    .optional()
    .meta({ description: 'Only the units of this group, with the counts of both.' }),
  limit: z.int().min(1).max(PAGE_MAX).default(PAGE_DEFAULT),
  cursor: codeSchema.optional().meta({ description: 'The `next` of the page before.' }),
};

/** Body of `POST /api/trace/narrow`. */
export const narrowQuestionSchema = z.strictObject({ conditions: conditionsSchema, ...page });

export type NarrowQuestion = z.infer<typeof narrowQuestionSchema>;

/** The same question in an address: its conditions as JSON text. */
export const narrowAddressSchema = z.strictObject({
  conditions: z
    .string()
    .max(20_000)
    .transform((text, context) => {
      try {
        return JSON.parse(text) as unknown;
      } catch {
        context.issues.push({
          code: 'custom',
          input: text.slice(0, 64),
          message: 'The conditions are not JSON.',
        });
        return z.NEVER;
      }
    })
    .pipe(conditionsSchema),
  certainty: certaintySchema.optional(),
});
