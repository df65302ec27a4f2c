import { z } from 'zod';

/** Most devices of one list; those with something to say come first. */
export const DEVICES_MAX = 500;

/** A device as the server knows it. */
export const deviceEntrySchema = z.object({
  device: z.string(),
  /** The highest number that has arrived; 0 for none. */
  highest: z.number(),
  /** Numbers below it that have not, as inclusive ranges. */
  missing: z.array(z.tuple([z.number(), z.number()])),
  missingCount: z.number(),
  /** When the first gap was seen; null without one. */
  missingSince: z.string().nullable(),
  lastSeenAt: z.string().nullable(),
  /** Where and by whom its last recorded event was made, and the doubt about its time; null without one. */
  last: z
    .object({ station: z.string().nullable(), operator: z.string().nullable(), uncertaintyMs: z.number() })
    .nullable(),
  retired: z
    .object({ event: z.string(), at: z.string(), reason: z.string(), hasSpokenSince: z.boolean() })
    .nullable(),
});
export type DeviceEntry = z.infer<typeof deviceEntrySchema>;

/** Every device that has spoken or was retired: those that owe first, then by when they were last heard of. */
export const deviceListSchema = z.object({
  asOf: z.string(),
  total: z.number(),
  devices: z.array(deviceEntrySchema).max(DEVICES_MAX),
});
export type DeviceList = z.infer<typeof deviceListSchema>;
