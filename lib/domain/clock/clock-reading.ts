import { z } from 'zod';

/** The most that a tablet's clock gains or loses: 100 millionths, a third of a second in an hour. */
export const DRIFT = 100e-6;

/** The clocks of one page agree within this many milliseconds, or one of them was set or stood still. */
export const AGREEMENT_MS = 20;

/**
 * What a device can read at one moment. The monotonic clock (milliseconds) counts from the begin of its `run`, which
 * is one page's life; nobody can set it, but it may stand still while the device sleeps. The wall clock (milliseconds
 * since 1970) goes on, but anybody can set it.
 */
export const clockReadingSchema = z.object({
  run: z.string(),
  monotonicMs: z.number(),
  wallMs: z.number(),
  /** Whether the page was visible ever since the reading before: a device does not sleep under a visible page. */
  isAwake: z.boolean(),
});
export type ClockReading = z.infer<typeof clockReadingSchema>;

/** How far the wall clock is ahead of the monotonic one: only a set clock or a sleep changes it. */
export function levelOf({ wallMs, monotonicMs }: ClockReading): number {
  return wallMs - monotonicMs;
}

/** Whether the second reading continues the monotonic count of the first. */
export function isSameRun(first: ClockReading, second: ClockReading): boolean {
  return first.run === second.run && second.monotonicMs >= first.monotonicMs;
}
