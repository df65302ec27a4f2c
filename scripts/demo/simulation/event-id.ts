import type { Random } from '@/scripts/demo/simulation/random';

/** Gives UUIDs version 7 that depend on nothing but time and seed, and that sort in the order of asking. */
export class EventIds {
  readonly #random: Random;
  #lastMs = 0;
  #inMs = 0;

  constructor(random: Random) {
    this.#random = random;
  }

  /** The next id; times may not go backwards, and a millisecond has room for 4,096. */
  next(atMs: number): string {
    this.#inMs = atMs === this.#lastMs ? this.#inMs + 1 : 0;
    this.#lastMs = atMs;
    const high = Math.floor(this.#random.fraction() * 2 ** 14);
    const low = Math.floor(this.#random.fraction() * 2 ** 48);
    return eventId({ atMs, inMs: this.#inMs, high, low });
  }
}

/** Id of the demo's last event, which tells that the demo is loaded to its end. */
export function lastEventId(endMs: number): string {
  return eventId({ atMs: endMs, inMs: 4095, high: 0x2d3a, low: 0xde4000000001 });
}

function eventId(parts: { atMs: number; inMs: number; high: number; low: number }): string {
  const time = parts.atMs.toString(16).padStart(12, '0');
  const counter = parts.inMs.toString(16).padStart(3, '0');
  const variant = (0x8000 + parts.high).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${counter}-${variant}-${parts.low.toString(16).padStart(12, '0')}`;
}
