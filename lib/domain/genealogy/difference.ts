import { z } from 'zod';
import {
  certaintySchema,
  countsSchema,
  owingSchema,
  relationSchema,
  type UsedUnit,
} from '@/lib/domain/genealogy/answer';

const standingSchema = z.object({ certainty: certaintySchema, relation: relationSchema });

/** How surely and how a unit is in an answer; null when it is not in it. */
export type Standing = z.infer<typeof standingSchema> | null;

/** The event that changed an answer, or null where too many came together to tell them apart. */
const causeSchema = z
  .object({
    id: z.string(),
    type: z.string(),
    at: z.string(),
    operator: z.string().nullable(),
    recordedAt: z.string(),
  })
  .nullable();
export type Cause = z.infer<typeof causeSchema>;

const changeSchema = z.object({
  unit: z.string(),
  before: standingSchema.nullable(),
  after: standingSchema.nullable(),
  by: causeSchema,
});
export type Change = z.infer<typeof changeSchema>;

/** What happened to an answer since it was given, as the wire tells it; changes sorted by unit. */
export const differenceSchema = z.object({
  since: z.string(),
  asOf: z.string(),
  complete: z.boolean(),
  owing: z.array(owingSchema),
  before: countsSchema,
  after: countsSchema,
  changes: z.array(changeSchema),
});
export type Difference = z.infer<typeof differenceSchema>;

/** Units whose standing differs between two answers, sorted by unit. */
export function changesBetween(
  before: ReadonlyMap<string, UsedUnit>,
  after: ReadonlyMap<string, UsedUnit>,
): Omit<Change, 'by'>[] {
  return [...new Set([...before.keys(), ...after.keys()])].sort(byCode).flatMap((unit) => {
    const [old, now] = [standingOf(before.get(unit)), standingOf(after.get(unit))];
    return old?.certainty === now?.certainty && old?.relation === now?.relation
      ? []
      : [{ unit, before: old, after: now }];
  });
}

function standingOf(used: UsedUnit | undefined): Standing {
  return used === undefined ? null : { certainty: used.certainty, relation: used.relation };
}

function byCode(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0;
}
