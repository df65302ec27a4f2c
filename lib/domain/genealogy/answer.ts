import { z } from 'zod';

/** Where a unit can be. */
export const PLACE_KINDS = ['station', 'stock', 'container', 'shipped', 'returned', 'scrapped'] as const;
export const placeKindSchema = z.enum(PLACE_KINDS);
export type PlaceKind = z.infer<typeof placeKindSchema>;

/** How a unit relates to an item, strongest first. */
export const RELATIONS = ['contains', 'formerly', 'touched'] as const;
export const relationSchema = z.enum(RELATIONS);
export type Relation = z.infer<typeof relationSchema>;

/** What the record proves, and what it cannot exclude. */
export const CERTAINTIES = ['certain', 'possible'] as const;
export const certaintySchema = z.enum(CERTAINTIES);
export type Certainty = z.infer<typeof certaintySchema>;

/**
 * Why the record cannot prove it: the times' own doubt reaches over the change of the item (`clock`), the work was
 * under way when the item changed (`span`), or the end of one reel was spliced to the next and the zone in which
 * either may have been placed was not used up (`splice`), counts say that a change was not scanned (`balance`), or a
 * device that scans changes there owes events of that time (`gap`). The statement counts them as bits in this order.
 */
export const DOUBTS = ['clock', 'span', 'splice', 'balance', 'gap'] as const;
export const doubtSchema = z.enum(DOUBTS);
export type Doubt = z.infer<typeof doubtSchema>;

/** A unit's place, as the wire tells it. */
export const placeSchema = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('station'), station: z.string().nullable() }),
    z.object({ kind: z.literal('stock') }),
    z.object({ kind: z.literal('container'), container: z.string() }),
    z.object({
      kind: z.literal('shipped'),
      container: z.string(),
      shipment: z.string(),
      customer: z.string(),
    }),
    z.object({ kind: z.literal('returned') }),
    z.object({ kind: z.literal('scrapped') }),
  ])
  .nullable();
export type Place = z.infer<typeof placeSchema>;

/** One unit of a where-used answer. */
export const usedUnitSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  certainty: certaintySchema,
  relation: relationSchema,
  place: placeSchema,
  through: z.array(z.string()).meta({ description: 'Inner units that hold the item, outermost first.' }),
  because: z.array(doubtSchema).optional().meta({ description: 'Why it is only possible.' }),
});
export type UsedUnit = z.infer<typeof usedUnitSchema>;

/** A device that has not delivered everything: missing numbers as inclusive ranges. */
export const owingSchema = z.object({
  device: z.string(),
  missing: z.array(z.tuple([z.number(), z.number()])),
  lastSeenAt: z.string(),
});
export type Owing = z.infer<typeof owingSchema>;

/**
 * A device that was retired as lost: what it has not sent will never come. Missing numbers as inclusive ranges; beyond
 * its `highest` number (0 when it never sent any) nobody knows how many there were.
 */
export const lostSchema = z.object({
  device: z.string(),
  missing: z.array(z.tuple([z.number(), z.number()])),
  highest: z.number(),
  lastSeenAt: z.string().nullable(),
  retiredAt: z.string(),
  reason: z.string(),
});
export type Lost = z.infer<typeof lostSchema>;

/**
 * Whether facts are missing (law 4). `owing` may still come, `lost` never will; an answer is complete when nothing is
 * missing in either way.
 */
export const completenessSchema = z.object({
  asOf: z.string(),
  complete: z.boolean().meta({ description: 'Nothing is owing, and nothing is lost.' }),
  owing: z.array(owingSchema).meta({ description: 'Devices whose missing events may still come.' }),
  lost: z.array(lostSchema).meta({ description: 'Devices whose missing events are lost for good.' }),
});
export type Completeness = z.infer<typeof completenessSchema>;

/** How many units of an answer are what. */
export const countsSchema = z.object({
  units: z.number(),
  certain: z.number(),
  possible: z.number(),
  contains: z.number(),
  formerly: z.number(),
  touched: z.number(),
  byPlace: z.object({
    station: z.number(),
    stock: z.number(),
    container: z.number(),
    shipped: z.number(),
    returned: z.number(),
    scrapped: z.number(),
  }),
});
export type Counts = z.infer<typeof countsSchema>;

/** The answer to "which units?". */
export const whereUsedAnswerSchema = completenessSchema.extend({
  counts: countsSchema,
  units: z.array(usedUnitSchema),
  next: z.string().nullable().meta({ description: 'Cursor of the next page, or null.' }),
});
export type WhereUsedAnswer = z.infer<typeof whereUsedAnswerSchema>;
