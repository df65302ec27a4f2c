import { z } from 'zod';

/** How far ahead of the server an event's time may be, in microseconds (wire contract: 5 minutes). */
export const FUTURE_TOLERANCE_US = 5 * 60 * 1_000_000;

const RFC_3339 =
  /^(\d{4})-(\d{2})-(\d{2})[Tt](\d{2}):(\d{2}):(\d{2})(?:\.(\d{1,9}))?(?:[Zz]|([+-])(\d{2}):(\d{2}))$/;

/**
 * Reads an RFC 3339 time with an offset as microseconds since 1970-01-01T00:00:00Z, or null when it is not one.
 * Digits beyond the microsecond must be zero: two different texts must never become one instant silently.
 * Leap seconds (":60") are refused, since neither PostgreSQL nor the tablets' clocks can tell them apart.
 */
export function parseInstant(text: string): number | null {
  const match = RFC_3339.exec(text);
  if (match === null) return null;
  const [
    ,
    year,
    month,
    day,
    hour,
    minute,
    second,
    fraction = '',
    sign,
    offsetHour = '0',
    offsetMinute = '0',
  ] = match;
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return null;
  if (Number(offsetHour) > 23 || Number(offsetMinute) > 59) return null;
  if (/[1-9]/.test(fraction.slice(6))) return null;
  const dayMs = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const date = new Date(dayMs);
  if (date.getUTCMonth() !== Number(month) - 1 || date.getUTCDate() !== Number(day)) return null;
  if (date.getUTCFullYear() !== Number(year)) return null;
  const localSeconds = dayMs / 1000 + Number(hour) * 3600 + Number(minute) * 60 + Number(second);
  const offsetSeconds = (Number(offsetHour) * 60 + Number(offsetMinute)) * 60 * (sign === '-' ? -1 : 1);
  const instantUs = (localSeconds - offsetSeconds) * 1_000_000 + Number(fraction.slice(0, 6).padEnd(6, '0'));
  return instantUs >= 0 ? instantUs : null;
}

/** Writes microseconds since the epoch as RFC 3339 in UTC, with three fractional digits, or six when needed. */
export function formatInstant(instantUs: number): string {
  const microseconds = ((instantUs % 1000) + 1000) % 1000;
  const text = new Date((instantUs - microseconds) / 1000).toISOString();
  return microseconds === 0 ? text : `${text.slice(0, -1)}${String(microseconds).padStart(3, '0')}Z`;
}

// What a date-time of JSON Schema leaves open: a year from 1970 on, no leap second, an offset.
const PATTERN =
  '^(19[7-9]|[2-9]\\d\\d)\\d-\\d\\d-\\d\\d[Tt]\\d\\d:[0-5]\\d:[0-5]\\d(\\.\\d{1,9})?([Zz]|[+-]\\d\\d:\\d\\d)$';

/** An RFC 3339 time with an offset, from 1970 on, kept as its sender wrote it. */
export const instantSchema = z
  .string()
  .max(64)
  .refine((text) => parseInstant(text) !== null, {
    error: 'A time is written like 2026-03-02T08:15:30.120+00:00, with an offset, not before 1970.',
    params: { code: 'not_a_time' },
  })
  .meta({ format: 'date-time', pattern: PATTERN });

/** Microseconds of a text that a schema has already accepted. */
export function instantOf(text: string): number {
  const instantUs = parseInstant(text);
  if (instantUs === null) throw new Error(`Not an instant: ${text.slice(0, 64)}`);
  return instantUs;
}

/** Place of an event in the order that counts: by time, ties by id (lower case). */
export type OrderKey = { atUs: number; id: string };

/** Negative when a comes before b, positive when after, 0 for the same event. */
export function compareKeys(a: OrderKey, b: OrderKey): number {
  if (a.atUs !== b.atUs) return a.atUs - b.atUs;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
