import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { placeKindSchema, placeSchema } from '@/lib/domain/genealogy/answer';

/** What can be the matter with a unit: an open failure, a hold, or everything passed and no sign-off. */
export const TROUBLES = ['failed', 'held', 'unsigned'] as const;
export type Trouble = (typeof TROUBLES)[number];

/** Which units of the floor's counts are listed. */
export const floorUnitsQuestionSchema = z.strictObject({
  place: placeKindSchema.default('station'),
  station: codeSchema.optional(),
  trouble: z.enum(TROUBLES).optional(),
  /** The page, from 1. */
  page: z.coerce.number().int().min(1).max(10_000).default(1),
});
export type FloorUnitsQuestion = z.infer<typeof floorUnitsQuestionSchema>;

/** Most units on a page. */
export const FLOOR_UNITS_PAGE = 100;

/** A unit behind a count of the floor, with what it waits for. */
export const floorUnitSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  place: placeSchema,
  openFailure: z.string().nullable(),
  nextOperation: z.string().nullable(),
  isHeld: z.boolean(),
  isUnsigned: z.boolean(),
  /** Of the last event at which it was worked on or moved, RFC 3339; null when there was none. */
  lastAt: z.string().nullable(),
});
export type FloorUnit = z.infer<typeof floorUnitSchema>;

/** A page of the units behind a count, those that failed first, then those that wait longest; `count` is of all. */
export type FloorUnits = { count: number; units: FloorUnit[] };
