import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { itemKindSchema, resultSchema } from '@/lib/domain/events/vocabulary';
import { checkAnswerSchema, refusalSchema } from '@/lib/domain/gate/question';
import { placeSchema } from '@/lib/domain/genealogy/answer';
import { scannedLabelSchema } from '@/lib/domain/station/scanned-label';
import { unitCautionSchema } from '@/lib/domain/units/unit-caution';

/**
 * What is this code? Asked with the station where it was scanned, for what may be done there; with the operator too, for
 * what the gate says of a unit of that code.
 */
export const scanQuestionSchema = z.strictObject({
  code: codeSchema,
  station: codeSchema.optional(),
  operator: codeSchema.optional(),
});

/** A hold that is open on something scanned. */
export const openHoldSchema = z.object({
  hold: z.string(),
  reason: z.string(),
  automatic: z.boolean(),
  at: z.string(),
});

const defectSchema = z.object({
  code: z.string(),
  position: z.string().nullable(),
  note: z.string().nullable(),
});
export type OpenDefect = z.infer<typeof defectSchema>;

/** A unit as a station needs to know it. */
export const unitPictureSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  place: placeSchema,
  outer: z.string().nullable(),
  isSigned: z.boolean(),
  isScrapped: z.boolean(),
  next: z.object({ operation: z.string(), step: z.int() }).nullable(),
  /** Owed steps of the route in order, with their last results. */
  steps: z.array(z.object({ step: z.int(), operation: z.string(), last: resultSchema.nullable() })),
  /** The failure that is open, how many results it took so far, and the defects of the last one. */
  failure: z
    .object({
      operation: z.string(),
      step: z.int().nullable(),
      tries: z.int(),
      attempts: z.int(),
      defects: z.array(defectSchema),
    })
    .nullable(),
  /** Positions that a scanned or installed part stands at now. */
  fitted: z.array(z.string()),
  /** Positions whose part was removed and not replaced. */
  open: z.array(z.string()),
  joined: z.array(z.object({ unit: z.string(), position: z.string() })),
  holds: z.array(openHoldSchema),
  /** What it lacks; and what is on hold inside it, looked up only off the route: where units are signed off, packed and returned. */
  cautions: z.array(unitCautionSchema),
  /** What speaks against signing it off now; empty when nothing does. */
  signing: z.array(refusalSchema),
});
export type UnitPicture = z.infer<typeof unitPictureSchema>;

/** An item as a station needs to know it. */
export const itemPictureSchema = z.object({
  item: z.string(),
  kind: itemKindSchema,
  part: z.string().nullable(),
  lot: z.string().nullable(),
  supplier: z.string().nullable(),
  quantity: z.number().nullable(),
  countedAt: z.string().nullable(),
  inspected: resultSchema.nullable(),
  isRetired: z.boolean(),
  mounted: z.array(z.object({ station: z.string(), slot: z.string(), since: z.string() })),
  holds: z.array(openHoldSchema),
});
export type ItemPicture = z.infer<typeof itemPictureSchema>;

/** Everything that a scanned code names; all parts are null or empty for a code that nobody knows. */
export const scanPictureSchema = z.object({
  code: z.string(),
  unit: unitPictureSchema.nullable(),
  item: itemPictureSchema.nullable(),
  container: z.object({ container: z.string(), shipment: z.string().nullable() }).nullable(),
  /** Whether nothing has this code, and earlier containers have codes that differ in their digits only. */
  isContainerLike: z.boolean(),
  /** What the code is the label of, when it names nothing that is recorded. */
  label: scannedLabelSchema.nullable(),
  /** Whether the plant file names it as a part. */
  isPart: z.boolean(),
  /** Product revisions whose serial pattern the code matches. */
  serialOf: z.array(z.object({ product: z.string(), revision: z.string() })),
  /** Of those, the ones whose units are started at the station that was named. */
  startable: z.array(z.object({ product: z.string(), revision: z.string() })),
});
export type ScanPicture = z.infer<typeof scanPictureSchema>;

/** The same with the gate's answer: one request of a station for both. */
export const judgedScanSchema = scanPictureSchema.extend({ verdict: checkAnswerSchema });
