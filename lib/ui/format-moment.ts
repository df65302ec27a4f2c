/** How exactly a moment is written. */
export type Precision = 'day' | 'minute' | 'second';

const DAY = { year: 'numeric', month: '2-digit', day: '2-digit' } as const;
const MINUTE = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;

/** A moment on the plant's clock as `2026-03-02 08:15:30`, which reads the same in every country and sorts as text. */
export function formatMoment(ms: number, options: { timeZone: string; precision: Precision }): string {
  const key = `${options.precision} ${options.timeZone}`;
  const format = formats.get(key) ?? newFormat(options);
  formats.set(key, format);
  return format.format(ms);
}

/** Kept: to make one is slow beside using it, and a list has many moments. */
const formats = new Map<string, Intl.DateTimeFormat>();

function newFormat({ timeZone, precision }: { timeZone: string; precision: Precision }) {
  // Swedish is the language whose dates are written as ISO 8601 writes them.
  return new Intl.DateTimeFormat('sv-SE', {
    timeZone,
    ...DAY,
    ...(precision === 'day' ? {} : MINUTE),
    ...(precision === 'second' ? { second: '2-digit' } : {}),
  });
}

/** The clock part of a moment, `08:15`. */
export function formatClock(ms: number, timeZone: string): string {
  return formatMoment(ms, { timeZone, precision: 'minute' }).slice(-5);
}
