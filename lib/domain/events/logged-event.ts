import type { WireEvent } from '@/lib/domain/events/catalogue';
import { instantOf, type OrderKey } from '@/lib/domain/time';

/** An event as the log knows it: the wire's content and its instant in microseconds. */
export type LoggedEvent = WireEvent & OrderKey;

/** Adds the instant to an event that the schema has accepted. */
export function toLogged(event: WireEvent): LoggedEvent {
  return { ...event, atUs: instantOf(event.at) };
}

/** The unit that an event is about, or null. */
export function subjectUnit(event: WireEvent): string | null {
  return 'unit' in event.body ? event.body.unit : null;
}

/** Half-width of the doubt about an event's time, in microseconds. */
export function doubtUs(event: WireEvent): number {
  return (event.uncertaintyMs ?? 0) * 1000;
}

/**
 * Whether two events say the same: the key order does not matter, absent defaults equal given ones, and the time is
 * compared as an instant.
 */
export function isSameContent(a: WireEvent, b: WireEvent): boolean {
  return canonical(a) === canonical(b);
}

function canonical(event: WireEvent): string {
  const { at, gate = 'enforce', uncertaintyMs = 0, ...rest } = event;
  const known = { ...rest, at: instantOf(at), gate, uncertaintyMs };
  return JSON.stringify(known, (key, value: unknown) => {
    if (key === 'atUs') return undefined;
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    return Object.fromEntries(Object.entries(value).sort(([x], [y]) => (x < y ? -1 : 1)));
  });
}
