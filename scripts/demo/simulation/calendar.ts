const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Days of production, weekends included; the last one is the day on which the demo ends. */
const DAYS = 21;
const WORKDAYS = 15;
/** A working day lasts until this hour of the next one: what the night shift does belongs to it. */
const DAY_BREAK_MS = 5 * HOUR_MS;
const OPEN_MS = 6.25 * HOUR_MS;
const CLOSE_MS = 18.75 * HOUR_MS;
/** The first goods-in and the end of the demo, by the simulation's clock. */
const FIRST_MS = 9 * HOUR_MS;
const END_MS = 18 * HOUR_MS;

/**
 * When the plant works, in milliseconds since the epoch. The simulation counts its working days without a gap, so that
 * it goes the same way whatever the weekday of its end; `wallMs` lays them on the calendar.
 */
export type Calendar = {
  /** First goods-in, on the day before the first working day. */
  firstMs: number;
  /** End of the demo: the evening of the last day, while the lines still run. */
  endMs: number;
  /** Midnights (UTC) at the begin of each working day, in order. */
  workdays: readonly number[];
  /** Whether the manned stations work. */
  isOpen(atMs: number): boolean;
  /** When the manned stations work next; the given time if they do. */
  nextOpenMs(atMs: number): number;
  /** The time on the wall at a simulated time; later is never earlier. */
  wallMs(atMs: number): number;
};

/**
 * The three weeks that end at a moment (RFC 3339), after a day of goods-in. The plant's clocks are set so that the
 * moment is 18:00 of its last day: whenever the demo is loaded, its lines are running.
 */
export function demoCalendar(endsAt: string): Calendar {
  const endsAtMs = Date.parse(endsAt);
  const lastMs = Math.floor(endsAtMs / DAY_MS) * DAY_MS;
  const shiftMs = endsAtMs - (lastMs + END_MS);
  const workdays = Array.from({ length: WORKDAYS }, (_, index) => lastMs - (WORKDAYS - 1 - index) * DAY_MS);
  const dates = [lastMs - DAYS * DAY_MS, ...workingDates(lastMs)];
  const goodsInMs = lastMs - WORKDAYS * DAY_MS;
  const isOpen = (atMs: number) => workdays.some((day) => day + OPEN_MS <= atMs && atMs < day + CLOSE_MS);
  return {
    firstMs: goodsInMs + FIRST_MS,
    endMs: lastMs + END_MS,
    workdays,
    isOpen,
    nextOpenMs: (atMs) => {
      if (isOpen(atMs)) return atMs;
      const next = workdays.find((day) => day + OPEN_MS > atMs);
      return next === undefined ? Number.POSITIVE_INFINITY : next + OPEN_MS;
    },
    wallMs: (atMs) => {
      const index = Math.min(WORKDAYS, Math.max(0, Math.floor((atMs - DAY_BREAK_MS - goodsInMs) / DAY_MS)));
      return atMs - (goodsInMs + index * DAY_MS) + (dates[index] ?? lastMs) + shiftMs;
    },
  };
}

/** Mondays to Fridays; a last day at a weekend is an extra shift, for which the first Monday is off. */
function workingDates(lastMs: number): number[] {
  const days = Array.from({ length: DAYS }, (_, index) => lastMs - (DAYS - 1 - index) * DAY_MS);
  return days.filter((day) => day === lastMs || !isWeekend(day)).slice(-WORKDAYS);
}

function isWeekend(dayMs: number): boolean {
  const weekday = new Date(dayMs).getUTCDay();
  return weekday === 0 || weekday === 6;
}

/** The next of some hours of every working day (UTC); never, after the last one. */
export function nextOf({ workdays }: Calendar, hours: readonly number[], atMs: number): number {
  const times = workdays.flatMap((day) => hours.map((hour) => day + hour * HOUR_MS));
  return times.find((time) => time >= atMs) ?? Number.MAX_SAFE_INTEGER;
}

/** The end of a demo that is loaded at a moment: the last full minute. */
export function endOfDemoLoadedAt(nowMs: number): string {
  return new Date(Math.floor(nowMs / 60_000) * 60_000).toISOString();
}

/** The end of a demo whose first event has this time (RFC 3339): it comes within a minute of the begin. */
export function endOfDemoBegunAt(firstAt: string): string {
  return endOfDemoLoadedAt(Date.parse(firstAt) + DAYS * DAY_MS + END_MS - FIRST_MS);
}

/** A time of day on a working day, counted from 0; negative counts from the last. */
export function onWorkday(calendar: Calendar, index: number, hours: number, minutes = 0): number {
  const day = calendar.workdays.at(index);
  if (day === undefined) throw new Error(`The demo has no working day ${index}.`);
  return day + hours * HOUR_MS + minutes * 60_000;
}
