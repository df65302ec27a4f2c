import { CLOCK_HEADER, measureClock, readClockStamp } from '@/lib/domain/clock/clock-exchange';
import { type ClockNotice, clockNotice } from '@/lib/domain/clock/clock-notice';
import type { ClockReading } from '@/lib/domain/clock/clock-reading';
import {
  advanceClock,
  betterClock,
  type ClockStamp,
  type DeviceClock,
  doubtAbout,
  newDeviceClock,
  stampOf,
  takeMeasurement,
} from '@/lib/domain/clock/device-clock';
import { type ClockSource, pageClockSource } from '@/lib/offline/clock-source';
import { mergeKeptClock } from '@/lib/offline/kept-clock';

const BEAT_MS = 5000;
const STALE_CONTACT_MS = 5 * 60_000;
const ASK_AGAIN_MS = 60_000;

/** What a page clock needs of its surroundings. */
type Surroundings = {
  source: () => ClockSource | null;
  /** As `mergeKeptClock`. */
  keep: (merge: (kept: DeviceClock | null) => DeviceClock) => Promise<void>;
};

/**
 * The time of this page, measured against the server at every contact and kept across reloads. One for a page: whoever
 * talks to the server goes through `fetch`, whoever records goes by `stamp`.
 */
export class PageClock {
  readonly #surroundings: Surroundings;
  readonly #listeners = new Set<() => void>();
  #source: ClockSource | null = null;
  #clock: DeviceClock | null = null;
  #askCount = 0;
  #hasTried = false;
  #notice: ClockNotice | null = null;
  #askedAtMs = Number.NEGATIVE_INFINITY;

  constructor(surroundings: Surroundings) {
    this.#surroundings = surroundings;
  }

  /** As the platform's `fetch`; the server's answer, whatever it says, tells its time as well. */
  readonly fetch = async (path: string, init: RequestInit = {}): Promise<Response> => {
    const sent = this.#advance().reading;
    this.#askCount += 1;
    const mark = `${sent.run}-${this.#askCount}`;
    const headers = new Headers(init.headers);
    headers.set(CLOCK_HEADER, mark);
    try {
      const response = await fetch(path, { ...init, headers });
      this.#measure({ sent, mark, stamp: response.headers.get(CLOCK_HEADER) });
      return response;
    } finally {
      this.#hasTried = true;
      this.#tell();
    }
  };

  /** The time now with its doubt, which also covers a time given before (`beginMs`) that an event carries with it. */
  stamp(beginMs?: number): ClockStamp {
    const clock = this.#advance();
    const { atMs, uncertaintyMs } = stampOf(clock);
    this.#clock = { ...clock, givenMs: atMs };
    return { atMs, uncertaintyMs: beginMs === undefined ? uncertaintyMs : doubtAbout(clock, beginMs) };
  }

  /** When the server was last heard, by its own time; null for never. */
  contactMs(): number | null {
    return this.#clock?.estimate?.contactMs ?? null;
  }

  /** Takes up what the device has kept and goes on keeping it, until the returned function is called. */
  start(): () => void {
    void this.#begin();
    const timer = setInterval(() => void this.#beat(), BEAT_MS);
    const keep = (): void => void this.#keep();
    const ask = (): void => void this.#ask();
    document.addEventListener('visibilitychange', keep);
    window.addEventListener('pagehide', keep);
    window.addEventListener('online', ask);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', keep);
      window.removeEventListener('pagehide', keep);
      window.removeEventListener('online', ask);
    };
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly notice = (): ClockNotice | null => this.#notice;

  async #begin(): Promise<void> {
    await this.#keep();
    await this.#ask();
  }

  async #beat(): Promise<void> {
    const clock = this.#advance();
    const sinceMs = stampOf(clock).atMs - (clock.estimate?.contactMs ?? Number.NEGATIVE_INFINITY);
    if (sinceMs >= STALE_CONTACT_MS && clock.reading.monotonicMs - this.#askedAtMs >= ASK_AGAIN_MS)
      void this.#ask();
    await this.#keep();
  }

  async #ask(): Promise<void> {
    this.#askedAtMs = this.#advance().reading.monotonicMs;
    await this.fetch('/api/clock').catch(() => undefined);
    await this.#keep();
  }

  async #keep(): Promise<void> {
    await this.#surroundings.keep((kept) => {
      const own = this.#advance();
      this.#clock = kept === null ? own : betterClock(own, kept);
      return this.#clock;
    });
    this.#tell();
  }

  #measure({ sent, mark, stamp }: { sent: ClockReading; mark: string; stamp: string | null }): void {
    const clock = this.#advance();
    const times = readClockStamp(mark, stamp);
    const measured = times && measureClock({ sent, ...times, returned: clock.reading });
    if (measured !== null) this.#clock = takeMeasurement(clock, measured);
  }

  #advance(): DeviceClock {
    this.#source ??= this.#surroundings.source();
    if (this.#source === null) throw new Error('A page clock runs in a page.');
    const reading = this.#source.read();
    this.#clock = this.#clock === null ? newDeviceClock(reading) : advanceClock(this.#clock, reading);
    return this.#clock;
  }

  #tell(): void {
    const notice = this.#hasTried && this.#clock !== null ? clockNotice(this.#clock) : null;
    if (JSON.stringify(notice) === JSON.stringify(this.#notice)) return;
    this.#notice = notice;
    for (const listener of this.#listeners) listener();
  }
}

/** The clock of this page. */
export const pageClock = new PageClock({ source: pageClockSource, keep: mergeKeptClock });
