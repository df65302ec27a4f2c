import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { slotPictureSchema } from '@/lib/domain/station/slot-picture';
import { stationEntrySchema } from '@/lib/domain/station/station-picture';

/** Whose slots are changed. */
export const changeoverQuestionSchema = z.strictObject({ station: codeSchema });

/** The slots of a station with what stands there, and the products that draw from them. */
export const changeoverPictureSchema = z.object({
  station: stationEntrySchema,
  slots: z.array(slotPictureSchema),
  products: z.array(z.object({ product: z.string(), revision: z.string() })),
});
export type ChangeoverPicture = z.infer<typeof changeoverPictureSchema>;
