import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { certaintySchema, placeKindSchema, relationSchema } from '@/lib/domain/genealogy/answer';
import { instantSchema, parseInstant } from '@/lib/domain/time';

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

/** What a where-used question asks about: at least one of them, each narrowing the same draw. */
const CONDITIONS = {
  item: codeSchema.optional(),
  lot: codeSchema.optional(),
  part: codeSchema.optional(),
  station: codeSchema.optional(),
  operator: codeSchema.optional(),
  from: instantParameter.optional(),
  to: instantParameter.optional(),
  at: instantParameter.optional().meta({ description: 'As the record stood about that moment.' }),
};

type Conditions = { [name in Exclude<keyof typeof CONDITIONS, 'at'>]?: string | undefined };

function hasCondition({ item, lot, part, station, operator, from, to }: Conditions): boolean {
  return [item, lot, part, station, operator, from, to].some((condition) => condition !== undefined);
}

const NO_CONDITION = {
  error: 'Ask for an item, a lot, a part, a station, an operator or a time.',
  params: { code: 'no_condition' },
};

/** Query of where-used: at least one of item, lot, part, station, operator, from and to. */
export const whereUsedQuestionSchema = z
  .strictObject({
    ...CONDITIONS,
    knownAt: instantParameter
      .optional()
      .meta({ description: 'As it was known then: nothing that arrived later.' }),
    place: listOf(placeKindSchema).optional().meta({ description: 'Comma-separated.' }),
    relation: listOf(relationSchema).optional().meta({ description: 'Comma-separated.' }),
    certainty: listOf(certaintySchema).optional().meta({ description: 'Comma-separated.' }),
    limit: z.coerce.number().int().min(1).max(PAGE_MAX).default(PAGE_DEFAULT),
    cursor: codeSchema.optional().meta({ description: 'The `next` of the page before.' }),
  })
  .refine(hasCondition, NO_CONDITION);

export type WhereUsedQuestion = z.infer<typeof whereUsedQuestionSchema>;

/** Query of the difference of a where-used answer between two moments at which it was, or could have been, given. */
export const differenceQuestionSchema = z
  .strictObject({
    ...CONDITIONS,
    since: instantParameter.meta({ description: 'As it was known then: when the answer was given.' }),
    until: instantParameter.optional().meta({ description: 'As it was known then; without it, now.' }),
    limit: z.coerce
      .number()
      .int()
      .min(1)
      .max(PAGE_MAX)
      .default(PAGE_DEFAULT)
      .meta({ description: 'Most changes that are listed; as text/csv all are.' }),
  })
  .refine(hasCondition, NO_CONDITION)
  .refine(
    ({ since, until }) =>
      (parseInstant(since) ?? 0) <= (parseInstant(until ?? '') ?? Number.POSITIVE_INFINITY),
    {
      error: 'The later moment comes second: give an `until` after `since`.',
      path: ['until'],
      params: { code: 'until_before_since' },
    },
  );

export type DifferenceQuestion = z.infer<typeof differenceQuestionSchema>;

/** Query of as-built: a unit, and the moment about which the record is asked. */
export const asBuiltQuestionSchema = z.strictObject({
  unit: codeSchema,
  at: instantParameter.optional(),
  knownAt: instantParameter.optional(),
});
