import { z } from 'zod';

/** Most events in one request. */
export const EVENTS_PER_REQUEST_MAX = 1000;
const PASSES_MAX = 200;
const PASS_LENGTH_MAX = 2000;

/** A request to append events; each event is checked on its own, so that a bad one never harms its neighbours. */
export const appendRequestSchema = z.strictObject({
  events: z.array(z.unknown()).min(1).max(EVENTS_PER_REQUEST_MAX),
  numbers: z
    .literal('once')
    .meta({
      description:
        'Refuse an event (`device_seq_reused`) whose device and number another event has: a device log that was restored from a copy finds out, and takes a new name.',
    })
    .optional(),
  passes: z
    .array(z.string().max(PASS_LENGTH_MAX))
    .max(PASSES_MAX)
    .meta({
      description:
        'Passes (`POST /api/pass`) of people who signed in on the device: they vouch for events that another session delivers.',
    })
    .optional(),
});
