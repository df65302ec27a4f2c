/** Lengths of time that the timeline offers. */
export const SPANS_MS = { shift: 8 * 3_600_000, day: 24 * 3_600_000, week: 7 * 24 * 3_600_000 } as const;

/** A time, in milliseconds since the epoch. */
export type TimeSpan = { fromMs: number; toMs: number };

/** Address of the timeline of a station; without a time it ends now. */
export function timelineAddress(station: string, span?: TimeSpan): string {
  const parameters = new URLSearchParams({ station });
  if (span !== undefined) {
    parameters.set('from', new Date(span.fromMs).toISOString());
    parameters.set('to', new Date(span.toMs).toISOString());
  }
  return `/slot-timeline?${parameters}`;
}

/** A time of another length around the same middle. */
export function spanAround({ fromMs, toMs }: TimeSpan, lengthMs: number): TimeSpan {
  const begin = Math.round((fromMs + toMs - lengthMs) / 2);
  return { fromMs: begin, toMs: begin + lengthMs };
}
