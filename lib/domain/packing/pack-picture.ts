import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { refusalSchema } from '@/lib/domain/gate/question';

/** Which container a packer has open. */
export const packQuestionSchema = z.strictObject({ container: codeSchema });

/** A container with what is in it, and what stops it from leaving. */
export const packPictureSchema = z.object({
  container: z.string(),
  /** False for a code that nothing was ever packed into. */
  isKnown: z.boolean(),
  inside: z.string().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
  destination: z.string().nullable(),
  /** Units directly in it, in the order in which they were packed. */
  units: z.array(
    z.object({ unit: z.string(), product: z.string().nullable(), revision: z.string().nullable() }),
  ),
  /** Containers directly in it, with the number of units at any depth. */
  containers: z.array(z.object({ container: z.string(), unitCount: z.int() })),
  /** Units in it at any depth. */
  unitCount: z.int(),
  /** Customers to whom something was shipped before. */
  customers: z.array(z.string()),
  /** Why it may not be shipped now; empty when it may. */
  blocked: z.array(refusalSchema),
});
export type PackPicture = z.infer<typeof packPictureSchema>;
