import { z } from 'zod';

/** A fault of a plant file with where it stands in the text; lines and columns count from 1. */
const fileFaultSchema = z.object({
  line: z.int(),
  column: z.int(),
  offset: z.int(),
  pointer: z.string(),
  code: z.string(),
  detail: z.string(),
});
export type FileFault = z.infer<typeof fileFaultSchema>;

/** What a plant file would do: nothing while it has faults; `warnings` are about the plant as it would be. */
export const plantPreviewSchema = z.object({
  faults: z.array(fileFaultSchema),
  warnings: z.array(
    z.object({
      code: z.enum([
        'part_not_listed',
        'product_not_listed',
        'station_not_listed',
        'slot_not_listed',
        'operation_without_station',
      ]),
      pointer: z.string(),
      name: z.string(),
    }),
  ),
  changes: z.array(
    z.object({
      kind: z.enum(['site', 'part', 'station', 'product', 'operator']),
      key: z.string(),
      change: z.enum(['added', 'changed']),
      fields: z.array(z.string()),
    }),
  ),
});
export type PlantPreview = z.infer<typeof plantPreviewSchema>;

/** The text of a plant file, as an editor has it: not necessarily JSON yet. */
export const plantTextSchema = z.strictObject({ text: z.string() });
