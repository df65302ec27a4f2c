import { formatMoment } from '@/lib/ui/format-moment';
import type { TimeSpan } from '@/lib/ui/slot-timeline/timeline-address';

const MINUTE_MS = 60_000;
const STEPS_MS = [1, 5, 15, 30, 60, 180, 360, 720, 1440, 4320].map((minutes) => minutes * MINUTE_MS);
const MARKS_MAX = 9;

/** A mark on the axis of time: where it is, and what the plant's clock says there. */
export type TimeMark = { ms: number; text: string };

/** At most nine marks at round times of the plant's clock; the day is told at the first one and where it changes. */
export function timeMarks({ fromMs, toMs }: TimeSpan, timeZone: string): TimeMark[] {
  const step = STEPS_MS.find((each) => (toMs - fromMs) / each <= MARKS_MAX) ?? STEPS_MS.at(-1) ?? MINUTE_MS;
  const clock = (ms: number) => formatMoment(ms, { timeZone, precision: 'minute' });
  const offset =
    Date.parse(`${clock(fromMs).replace(' ', 'T')}:00Z`) - Math.floor(fromMs / MINUTE_MS) * MINUTE_MS;
  const marks: TimeMark[] = [];
  let day = '';
  for (let ms = Math.ceil((fromMs + offset) / step) * step - offset; ms <= toMs; ms += step) {
    const text = clock(ms);
    marks.push({ ms, text: text.startsWith(day) && day !== '' ? text.slice(-5) : text.slice(5) });
    day = text.slice(0, 10);
  }
  return marks;
}
