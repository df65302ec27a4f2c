import type { Random } from '@/tests/reference/model/random';

const BASE_MS = Date.UTC(2026, 2, 2, 8);
const TICK_US = 30_000_000;
const NUDGES_US = [-1, 1, -1000, 1000, -500_000, 500_000, -10_000_000, 10_000_000];
const DOUBTS_MS = [1, 500, 1000, 10_000, 30_000, 30_000, 60_000, 180_000];
const SPANS_US = [0, 1, 1000, 10_000_000, TICK_US, TICK_US, 2 * TICK_US, 10 * TICK_US];
const OFFSETS_MINUTES = [0, 0, 60, -330, 345];

/** Microseconds after the history's first instant, near `tick` and mostly on a tick, so that ties abound. */
export function randomInstantUs(random: Random, tick: number, ticks: number): number {
  const near = random.chance(0.12) ? random.int(0, ticks) : tick + random.pick([0, 0, 0, -1, 1, 2]);
  const nudge = random.chance(0.35) ? random.pick(NUDGES_US) : 0;
  return Math.max(0, near * TICK_US + nudge);
}

/** How long a pass may have taken, in microseconds; often just to another tick. */
export function randomSpanUs(random: Random): number {
  return random.pick(SPANS_US);
}

/** A doubt in milliseconds, often as wide as a tick so that bounds coincide. */
export function randomDoubtMs(random: Random): number {
  return random.pick(DOUBTS_MS);
}

/** RFC 3339 with a random offset and no more digits than the instant needs. */
export function randomTimeText(random: Random, instantUs: number): string {
  const offset = random.pick(OFFSETS_MINUTES);
  const wallMs = BASE_MS + offset * 60_000 + Math.floor(instantUs / 1000);
  const [dateTime, millis] = new Date(wallMs).toISOString().slice(0, -1).split('.');
  const micros = `${millis}${String(instantUs % 1000).padStart(3, '0')}`.replace(/0+$/, '');
  return `${dateTime}${micros === '' ? '' : `.${micros}`}${offsetText(random, offset)}`;
}

function offsetText(random: Random, minutes: number): string {
  if (minutes === 0 && random.chance(0.5)) return 'Z';
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0');
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
}

/** A valid UUID version 7 whose own time says nothing about the event's. */
export function randomUuidV7(random: Random): string {
  const hex = (digits: number) =>
    Array.from({ length: digits }, () => random.int(0, 15).toString(16)).join('');
  const ms = (BASE_MS + random.int(0, 3_600_000)).toString(16).padStart(12, '0');
  const variant = random.pick(['8', '9', 'a', 'b']);
  return `${ms.slice(0, 8)}-${ms.slice(8)}-7${hex(3)}-${variant}${hex(3)}-${hex(12)}`;
}
