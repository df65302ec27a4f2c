import { z } from 'zod';
import type { ClockMeasurement } from '@/lib/domain/clock/clock-exchange';
import {
  AGREEMENT_MS,
  type ClockReading,
  clockReadingSchema,
  DRIFT,
  isSameRun,
  levelOf,
} from '@/lib/domain/clock/clock-reading';
import { UNCERTAINTY_MAX_MS } from '@/lib/domain/events/declare-event';

/** No event is older than the software that records it: what a clock that fell back to its first day is lifted to. */
export const EARLIEST_MS = Date.UTC(2026, 0, 1);

// Times of one device keep their order over a correction of its clock up to this long.
const KEPT_ORDER_MS = 1000;
// Work whose begin was given by a clock that was this far ahead is over when the time comes that it named.
const LEAD_MAX_MS = 3_600_000;
const BETTERINGS_MAX = 16;

/** What a device knows of the time: its last reading, and what the server's clock showed then. */
export const deviceClockSchema = z.object({
  reading: clockReadingSchema,
  /** Null before the first contact. All times are the server's, in milliseconds since 1970. */
  estimate: z.object({ atMs: z.number(), doubtMs: z.number(), contactMs: z.number() }).nullable(),
  /** The level from which a set clock or a sleep is told. */
  levelMs: z.number(),
  /** How far the wall clock was seen to be set since the last contact; negative when it was set back. */
  setMs: z.number(),
  /** When the doubt became less, and how great it was before: a time given before was no better than that. */
  betterings: z.array(z.object({ untilMs: z.number(), doubtMs: z.number() })),
  /** The last time that was given out. */
  givenMs: z.number(),
});
export type DeviceClock = z.infer<typeof deviceClockSchema>;

/** A moment as events carry it. */
export type ClockStamp = { atMs: number; uncertaintyMs: number };

/** A device that has never had contact. */
export function newDeviceClock(reading: ClockReading): DeviceClock {
  return { reading, estimate: null, levelMs: levelOf(reading), setMs: 0, betterings: [], givenMs: 0 };
}

/**
 * Carries what is known on to a new reading; the true time stays inside the doubt. While a page lives, its monotonic
 * clock counts. What that clock missed, only the wall clock can tell, and anybody may have set it: so that time is
 * believed and doubted by as much again. (Not told from that: a wall clock that was set back by half to all of the time
 * for which the device slept or had no page open.)
 */
export function advanceClock(clock: DeviceClock, reading: ClockReading): DeviceClock {
  return isSameRun(clock.reading, reading) ? countOn(clock, reading) : takeUp(clock, reading);
}

/** The same page: its monotonic clock has gone on, and it stands still only in a sleep. */
function countOn(clock: DeviceClock, reading: ClockReading): DeviceClock {
  const countedMs = reading.monotonicMs - clock.reading.monotonicMs;
  const counted = widen({ ...clock, reading }, { passedMs: countedMs, doubtMs: countedMs * DRIFT });
  const changeMs = levelOf(reading) - clock.levelMs;
  if (Math.abs(changeMs) <= AGREEMENT_MS) return counted;
  const noticed = { ...counted, levelMs: levelOf(reading) };
  const set = { ...noticed, setMs: clock.setMs + changeMs };
  const doubtMs = Math.abs(changeMs) * (1 + 2 * DRIFT) + AGREEMENT_MS;
  // Under a visible page the clock was set, most likely forward; a sleep is not excluded.
  if (changeMs > 0 && reading.isAwake) return widen(set, { passedMs: 0, doubtMs });
  if (changeMs > 0) return widen(noticed, { passedMs: changeMs, doubtMs });
  // Set back: the monotonic clock is right, unless a sleep of any length hides behind it.
  return reading.isAwake ? set : widen(set, { passedMs: 0, doubtMs: UNCERTAINTY_MAX_MS });
}

/** A new page, or another tab: nothing but the wall clock tells for how long nobody looked. */
function takeUp(clock: DeviceClock, reading: ClockReading): DeviceClock {
  const elapsedMs = reading.wallMs - clock.reading.wallMs;
  const moved = { ...clock, reading, levelMs: levelOf(reading) };
  if (elapsedMs < -AGREEMENT_MS)
    return widen({ ...moved, setMs: clock.setMs + elapsedMs }, { passedMs: 0, doubtMs: UNCERTAINTY_MAX_MS });
  const passedMs = Math.max(0, elapsedMs);
  return widen(moved, { passedMs, doubtMs: passedMs + AGREEMENT_MS });
}

function widen(clock: DeviceClock, by: { passedMs: number; doubtMs: number }): DeviceClock {
  if (clock.estimate === null) return clock;
  const { atMs, doubtMs, contactMs } = clock.estimate;
  const doubt = Math.min(UNCERTAINTY_MAX_MS, doubtMs + by.doubtMs);
  return { ...clock, estimate: { atMs: atMs + by.passedMs, doubtMs: doubt, contactMs } };
}

/** Takes a measurement in, unless what is known is better and agrees with it. */
export function takeMeasurement(before: DeviceClock, measured: ClockMeasurement): DeviceClock {
  const clock = { ...advanceClock(before, measured.reading), setMs: 0 };
  const { atMs, doubtMs } = measured;
  const contactMs = atMs;
  const old = clock.estimate ?? { atMs: clock.reading.wallMs, doubtMs: UNCERTAINTY_MAX_MS };
  const errorMs = Math.abs(old.atMs - atMs) + doubtMs;
  const isInside = errorMs <= old.doubtMs + 2 * doubtMs;
  if (clock.estimate !== null && isInside && old.doubtMs <= doubtMs)
    return { ...clock, estimate: { ...clock.estimate, contactMs } };
  const bettering = {
    untilMs: Math.max(atMs, Math.min(clock.givenMs, atMs + LEAD_MAX_MS)),
    doubtMs: isInside ? old.doubtMs : Math.max(old.doubtMs, errorMs),
  };
  // An older one that was no worse is covered by this one.
  const betterings = [...clock.betterings.filter((each) => each.doubtMs > bettering.doubtMs), bettering];
  return {
    ...clock,
    levelMs: levelOf(clock.reading),
    estimate: { atMs, doubtMs, contactMs },
    betterings: betterings.slice(-BETTERINGS_MAX),
  };
}

/** What one page (`own`) and another one of the device (`kept`) know, whichever is the better at the first's reading. */
export function betterClock(own: DeviceClock, kept: DeviceClock): DeviceClock {
  const carried = advanceClock(kept, own.reading);
  const doubtOf = ({ estimate }: DeviceClock) => estimate?.doubtMs ?? Number.POSITIVE_INFINITY;
  const better = doubtOf(carried) < doubtOf(own) ? carried : own;
  return { ...better, givenMs: Math.max(own.givenMs, kept.givenMs) };
}

/**
 * The time at the clock's reading, for an event. A device without contact says what its wall clock shows, with the
 * widest doubt. A time is not before the one that was given last, as long as the difference is small.
 */
export function stampOf(clock: DeviceClock): ClockStamp {
  const { atMs, doubtMs } = clock.estimate ?? {
    atMs: Math.max(EARLIEST_MS, clock.reading.wallMs),
    doubtMs: UNCERTAINTY_MAX_MS,
  };
  const aheadMs = clock.givenMs - atMs;
  const liftMs = aheadMs > 0 && aheadMs <= KEPT_ORDER_MS ? aheadMs : 0;
  return { atMs: Math.round(atMs + liftMs), uncertaintyMs: wholeDoubt(doubtMs + liftMs) };
}

/** The doubt about a time that this device gave out within the last hour: no better than any moment since. */
export function doubtAbout(clock: DeviceClock, givenMs: number): number {
  const worse = clock.betterings.filter((each) => each.untilMs >= givenMs).map((each) => each.doubtMs);
  return Math.max(stampOf(clock).uncertaintyMs, ...worse.map(wholeDoubt));
}

/** A stamp from a clock that proved to be ahead: it was not after now, and the doubt keeps what it did not exclude. */
export function notAfter(stamp: ClockStamp, now: ClockStamp): ClockStamp {
  if (stamp.atMs <= now.atMs) return stamp;
  const earliestMs = stamp.atMs - stamp.uncertaintyMs;
  const uncertaintyMs = Math.max(now.uncertaintyMs, now.atMs - earliestMs);
  return {
    atMs: now.atMs,
    uncertaintyMs: wholeDoubt(earliestMs > now.atMs ? UNCERTAINTY_MAX_MS : uncertaintyMs),
  };
}

/** A half-width in whole milliseconds, wide enough for a time that was rounded to them as well. */
function wholeDoubt(doubtMs: number): number {
  return Math.min(UNCERTAINTY_MAX_MS, Math.ceil(doubtMs + 0.5));
}
