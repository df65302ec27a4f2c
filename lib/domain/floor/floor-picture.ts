import { z } from 'zod';
import { HOLD_TARGET_KINDS, resultSchema } from '@/lib/domain/events/vocabulary';

/** What stops a station or lets it run, worst first. */
const STATION_STATES = ['held', 'missing', 'running', 'idle'] as const;

const stationPictureSchema = z.object({
  station: z.string(),
  operation: z.string(),
  state: z.enum(STATION_STATES),
  slots: z.array(z.object({ slot: z.string(), content: z.enum(['filled', 'held', 'missing', 'empty']) })),
  lastHour: z.object({ passed: z.number(), failed: z.number() }),
  last: z
    .object({ unit: z.string(), product: z.string().nullable(), result: resultSchema, at: z.number() })
    .nullable(),
  waiting: z.object({
    units: z.number(),
    failed: z.number(),
    held: z.number(),
    longestSince: z.number().nullable(),
  }),
});

/** A station on the floor screen; times are milliseconds since the epoch. */
export type StationPicture = z.infer<typeof stationPictureSchema>;

const linePictureSchema = z.object({
  line: z.string().nullable(),
  products: z.array(z.string()),
  stations: z.array(stationPictureSchema),
  /** Units that passed and failed at the line's last station that did anything, by clock hour, oldest first. */
  hours: z.array(z.object({ at: z.number(), passed: z.number(), failed: z.number() })),
  hoursOf: z.string().nullable(),
});
export type LinePicture = z.infer<typeof linePictureSchema>;

/** Everything that the floor screen shows, made at `at`; times are milliseconds since the epoch. */
export const floorPictureSchema = z.object({
  at: z.number(),
  lines: z.array(linePictureSchema),
  /** Stations that no route comes to and where no unit was ever processed: marking, packing, goods-in … */
  others: z.array(z.string()),
  places: z.object({
    station: z.number(),
    stock: z.number(),
    container: z.number(),
    shipped: z.number(),
    returned: z.number(),
    scrapped: z.number(),
  }),
  holds: z.object({
    open: z.number(),
    newest: z.array(
      z.object({
        hold: z.string(),
        kind: z.enum(HOLD_TARGET_KINDS),
        id: z.string(),
        reason: z.string(),
        at: z.number(),
      }),
    ),
  }),
  /** Devices that owe events, and those that were lost with some. */
  devices: z.object({ owing: z.number(), lost: z.number() }),
  stuck: z.array(
    z.object({
      unit: z.string(),
      product: z.string().nullable(),
      station: z.string().nullable(),
      openFailure: z.string().nullable(),
      nextOperation: z.string().nullable(),
      isHeld: z.boolean(),
      since: z.number(),
    }),
  ),
});
export type FloorPicture = z.infer<typeof floorPictureSchema>;
