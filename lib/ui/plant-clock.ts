import { formatMoment } from '@/lib/ui/format-moment';

/**
 * The instant at which the plant's clock shows a local time (`2026-03-02T08:15` or with seconds, as a date-time field
 * gives it), or null for anything else. A time that the clock shows twice is the first of the two; one that it jumps
 * over is moved on by the jump.
 */
export function instantOnPlantClock(local: string, timeZone: string): string | null {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/.test(local)) return null;
  const asIfUtcMs = Date.parse(`${local}Z`);
  if (Number.isNaN(asIfUtcMs)) return null;
  const candidates = [-1, 1].map((side) => asIfUtcMs - offsetMs(asIfUtcMs + side * DAY_MS, timeZone));
  const [early = asIfUtcMs, late = asIfUtcMs] = candidates.sort((a, b) => a - b);
  const isShown = (ms: number) => ms + offsetMs(ms, timeZone) === asIfUtcMs;
  return new Date(isShown(early) ? early : late).toISOString();
}

/** What the plant's clock shows at an instant, as a date-time field wants it: `2026-03-02T08:15`, or with seconds. */
export function plantClockAt(
  instant: string,
  timeZone: string,
  precision: 'minute' | 'second' = 'minute',
): string {
  return formatMoment(Date.parse(instant), { timeZone, precision }).replace(' ', 'T');
}

const DAY_MS = 24 * 3600 * 1000;

function offsetMs(ms: number, timeZone: string): number {
  const shown = formatMoment(ms, { timeZone, precision: 'second' }).replace(' ', 'T');
  return Date.parse(`${shown}Z`) - Math.floor(ms / 1000) * 1000;
}
