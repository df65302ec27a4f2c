import type { ClockExchange } from '@/lib/domain/clock/clock-exchange';
import type { ClockReading } from '@/lib/domain/clock/clock-reading';

/** A device in a world whose time the test knows: clocks drift, are set, stand still in sleep and begin again. */
export class SimulatedDevice {
  trueMs: number;
  readonly #monotonicRate: number;
  readonly #wallRate: number;
  #wallMs: number;
  #monotonicMs = 17.25;
  #runCount = 1;
  #isAwake = true;

  constructor(start: { trueMs: number; skewMs: number; monotonicDrift: number; wallDrift: number }) {
    this.trueMs = start.trueMs;
    this.#wallMs = start.trueMs + start.skewMs;
    this.#monotonicRate = 1 + start.monotonicDrift;
    this.#wallRate = 1 + start.wallDrift;
  }

  /** As a browser tells it: the wall clock in whole milliseconds, the monotonic one in tenths. */
  read(): ClockReading {
    const isAwake = this.#isAwake;
    this.#isAwake = true;
    return {
      run: `run-${this.#runCount}`,
      monotonicMs: Math.floor(this.#monotonicMs * 10) / 10,
      wallMs: Math.floor(this.#wallMs),
      isAwake,
    };
  }

  work(forMs: number): void {
    this.trueMs += forMs;
    this.#monotonicMs += forMs * this.#monotonicRate;
    this.#wallMs += forMs * this.#wallRate;
  }

  sleep(forMs: number): void {
    this.trueMs += forMs;
    this.#wallMs += forMs * this.#wallRate;
  }

  /** Somebody sets the wall clock. */
  set(byMs: number): void {
    this.#wallMs += byMs;
  }

  hide(): void {
    this.#isAwake = false;
  }

  reload(closedMs: number): void {
    this.sleep(closedMs);
    this.otherTab();
  }

  /** From now on another page of the same device is read. */
  otherTab(): this {
    this.#runCount += 1;
    this.#monotonicMs = this.#runCount / 7;
    return this;
  }

  /** A request and its answer, delayed on both ways; the server keeps the true time in whole milliseconds. */
  exchange(delays: { thereMs: number; heldMs: number; backMs: number }): ClockExchange {
    const sent = this.read();
    this.work(delays.thereMs);
    const receivedMs = Math.floor(this.trueMs);
    this.work(delays.heldMs);
    const transmittedMs = Math.floor(this.trueMs);
    this.work(delays.backMs);
    return { sent, receivedMs, transmittedMs, returned: this.read() };
  }
}
