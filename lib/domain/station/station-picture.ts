import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { resultSchema } from '@/lib/domain/events/vocabulary';
import { slotPictureSchema } from '@/lib/domain/station/slot-picture';

/** Which station a tablet asks about. */
export const stationQuestionSchema = z.strictObject({ code: codeSchema });

/** A station as it is chosen from a list. */
export const stationEntrySchema = z.object({
  code: z.string(),
  line: z.string().nullable(),
  operation: z.string(),
  slotCount: z.int(),
});
export type StationListEntry = z.infer<typeof stationEntrySchema>;

/** All stations in the order of the plant file. */
export const stationListSchema = z.object({ stations: z.array(stationEntrySchema) });

const productNameSchema = z.object({ product: z.string(), revision: z.string() });
export type ProductName = z.infer<typeof productNameSchema>;

/** A result that was given at a station; `isHeld` when its unit is on hold now. */
export const recentResultSchema = z.object({
  event: z.string(),
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  /** Null for a sign-off. */
  result: resultSchema.nullable(),
  at: z.string(),
  operator: z.string().nullable(),
  defects: z.array(z.object({ code: z.string(), position: z.string().nullable() })),
  isVoided: z.boolean(),
  isHeld: z.boolean(),
});
export type RecentResult = z.infer<typeof recentResultSchema>;

/** The item that was scanned last for a part of a product here. */
const recentFitSchema = z.object({
  product: z.string(),
  revision: z.string(),
  part: z.string(),
  item: z.string(),
});
export type RecentFit = z.infer<typeof recentFitSchema>;

/** Something that was measured last of a product here, with its unit and limits. */
const usualReadingSchema = z.object({
  product: z.string(),
  revision: z.string(),
  name: z.string(),
  unit: z.string().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
export type UsualReading = z.infer<typeof usualReadingSchema>;

/** Everything that the screen of a station shows before a unit is scanned, and what was usual here lately. */
export const stationPictureSchema = z.object({
  station: stationEntrySchema,
  /** Whether any route has a step of this operation; elsewhere units are started, signed off or repaired. */
  isOnRoute: z.boolean(),
  /** Whether the plant says that who asks is qualified for the operation. */
  isQualified: z.boolean(),
  products: z.array(productNameSchema),
  slots: z.array(slotPictureSchema),
  /** Defect codes given here lately, the most used first. */
  defects: z.array(z.object({ code: z.string(), count: z.int() })),
  /** Further codes that were given elsewhere in the plant lately, the most used first. */
  defectsElsewhere: z.array(z.string()),
  fits: z.array(recentFitSchema),
  /** A tablet may have kept a picture from before it told them. */
  readings: z.array(usualReadingSchema).default([]),
  /** Products whose units were joined into units here lately. */
  joins: z.array(productNameSchema),
  recent: z.array(recentResultSchema),
});
export type StationPicture = z.infer<typeof stationPictureSchema>;
