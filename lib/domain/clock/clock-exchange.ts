import { z } from 'zod';
import { AGREEMENT_MS, type ClockReading, DRIFT, isSameRun, levelOf } from '@/lib/domain/clock/clock-reading';

/** The request header with the sender's mark, and the answer's with mark, receive and transmit time (RFC 5905). */
export const CLOCK_HEADER = 'x-reelkin-clock';

const MARK = /^[\w-]{1,40}$/;
const STAMP = /^([\w-]{1,40}) (\d{1,15}) (\d{1,15})$/;

// Four times in whole milliseconds, each cut off below.
const RESOLUTION_MS = 2;

/** What `GET /api/clock` answers. */
export const clockAnswerSchema = z.object({ now: z.string().meta({ format: 'date-time' }) });

/** A request and its answer: the device's clocks when it left and came back, the server's when it had it. */
export type ClockExchange = {
  sent: ClockReading;
  receivedMs: number;
  transmittedMs: number;
  returned: ClockReading;
};

/** The server's time (milliseconds since 1970) at a reading of the device, and the half-width of the doubt about it. */
export type ClockMeasurement = { reading: ClockReading; atMs: number; doubtMs: number };

/** What the server writes for a request's mark; null for a request without one, or with what is none. */
export function clockStamp(
  mark: string | null,
  times: { receivedMs: number; transmittedMs: number },
): string | null {
  if (mark === null || !MARK.test(mark)) return null;
  return `${mark} ${times.receivedMs} ${times.transmittedMs}`;
}

/** The server's times for the request with this mark; null for another one's: an answer that was kept or replayed. */
export function readClockStamp(
  mark: string,
  stamp: string | null,
): { receivedMs: number; transmittedMs: number } | null {
  const [, itsMark, received, transmitted] = STAMP.exec(stamp ?? '') ?? [];
  if (itsMark !== mark) return null;
  return { receivedMs: Number(received), transmittedMs: Number(transmitted) };
}

/**
 * Offset and delay as in RFC 5905, section 8, against the monotonic clock: the way there and the way back share the
 * round trip in a way that nobody knows, so the doubt is half of it. Null when a clock was set or stood still meanwhile.
 */
export function measureClock(exchange: ClockExchange): ClockMeasurement | null {
  const { sent, receivedMs, transmittedMs, returned } = exchange;
  if (!isSameRun(sent, returned)) return null;
  if (Math.abs(levelOf(returned) - levelOf(sent)) > AGREEMENT_MS) return null;
  const tripMs = returned.monotonicMs - sent.monotonicMs;
  const heldMs = transmittedMs - receivedMs;
  if (heldMs < 0 || heldMs > tripMs * (1 + DRIFT) + RESOLUTION_MS) return null;
  const delayMs = Math.max(0, tripMs - heldMs);
  return {
    reading: returned,
    atMs: transmittedMs + delayMs / 2,
    doubtMs: delayMs / 2 + RESOLUTION_MS + DRIFT * tripMs,
  };
}
