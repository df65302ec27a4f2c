import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { certaintySchema, placeKindSchema, relationSchema } from '@/lib/domain/genealogy/answer';
import { instantSchema } from '@/lib/domain/time';

/** Most units on a page. */
export const PAGE_MAX = 5000;
const PAGE_DEFAULT = 500;

function listOf<T extends z.ZodType>(member: T) {
  return z.preprocess(
    (value) => (typeof value === 'string' ? value.split(',') : value),
    z.array(member).min(1).max(10),
  );
}

/**
 * A time in a query. A plus sign that was not percent-encoded arrives as a space, which no time has: it is read as
 * the plus that it was.
 */
export const instantParameter = z.preprocess(
  (value) => (typeof value === 'string' ? value.replace(/ (?=\d\d:\d\d$)/, '+') : value),
  instantSchema,
);

/** Query of where-used: at least one of item, lot, part, station, operator, from and to. */
export const whereUsedQuestionSchema = z
  .strictObject({
    item: codeSchema.optional(),
    lot: codeSchema.optional(),
    part: codeSchema.optional(),
    station: codeSchema.optional(),
    operator: codeSchema.optional(),
    from: instantParameter.optional(),
    to: instantParameter.optional(),
    at: instantParameter.optional().meta({ description: 'As the record stood about that moment.' }),
    knownAt: instantParameter
      .optional()
      .meta({ description: 'As it was known then: nothing that arrived later.' }),
    place: listOf(placeKindSchema).optional().meta({ description: 'Comma-separated.' }),
    relation: listOf(relationSchema).optional().meta({ description: 'Comma-separated.' }),
    certainty: listOf(certaintySchema).optional().meta({ description: 'Comma-separated.' }),
    limit: z.coerce.number().int().min(1).max(PAGE_MAX).default(PAGE_DEFAULT),
    cursor: codeSchema.optional().meta({ description: 'The `next` of the page before.' }),
  })
  .refine(
    ({ item, lot, part, station, operator, from, to }) =>
      [item, lot, part, station, operator, from, to].some((condition) => condition !== undefined),
    {
      error: 'Ask for an item, a lot, a part, a station, an operator or a time.',
      params: { code: 'no_condition' },
    },
  );

export type WhereUsedQuestion = z.infer<typeof whereUsedQuestionSchema>;

/** Query of as-built: a unit, and the moment about which the record is asked. */
export const asBuiltQuestionSchema = z.strictObject({
  unit: codeSchema,
  at: instantParameter.optional(),
  knownAt: instantParameter.optional(),
});
