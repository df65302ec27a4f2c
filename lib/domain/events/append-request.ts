import { z } from 'zod';

/** Most events in one request. */
export const EVENTS_PER_REQUEST_MAX = 1000;

/** A request to append events; each event is checked on its own, so that a bad one never harms its neighbours. */
export const appendRequestSchema = z.strictObject({
  events: z.array(z.unknown()).min(1).max(EVENTS_PER_REQUEST_MAX),
});
