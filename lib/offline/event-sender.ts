import { type AppendResult, refusalReasons } from '@/lib/domain/events/append-answer';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { DeviceLog } from '@/lib/offline/device-log';
import type { Posted } from '@/lib/offline/post-events';

const EVENTS_TOGETHER_MAX = 100;
const FIRST_PAUSE_MS = 400;
const LONGEST_PAUSE_MS = 15_000;

/** What the sender is about. */
export type SenderState = 'idle' | 'sending' | 'retrying' | 'signed_out' | 'clock_ahead';

/** What the sender needs of its surroundings. */
export type SenderOptions = {
  log: DeviceLog;
  /** Whose session sends. */
  badge: string;
  post: (events: readonly WireEvent[]) => Promise<Posted>;
  onState: (state: SenderState) => void;
  /** An event was answered: null reasons for recorded. */
  onSettled: (id: string, reasons: Refusal[] | null) => void;
  /** Runs work while no other tab runs its own. */
  alone: (work: () => Promise<void>) => Promise<void>;
  pause: (ms: number) => Promise<void>;
  /** From 0 to 1. */
  random: () => number;
};

/**
 * Sends the device's events in order, again and again under the same ids, until the server has answered each. Only one
 * tab sends at a time, and only what the one who is signed in has done.
 */
export class EventSender {
  readonly #options: SenderOptions;
  #isRunning = false;
  #isWanted = false;

  constructor(options: SenderOptions) {
    this.#options = options;
  }

  /** Sends what waits; returns when nothing does, or nothing can be sent. Calling it again meanwhile is harmless. */
  async run(): Promise<void> {
    this.#isWanted = true;
    if (this.#isRunning) return;
    this.#isRunning = true;
    try {
      while (this.#isWanted) {
        this.#isWanted = false;
        await this.#options.alone(() => this.#sendAll());
      }
    } finally {
      this.#isRunning = false;
    }
  }

  async #sendAll(): Promise<void> {
    const { log, badge, post, onState, pause, random } = this.#options;
    for (let failureCount = 0; ; ) {
      const entries = await log.entries();
      const waiting = entries
        .filter((entry) => entry.reasons === null && entry.badge === badge)
        .slice(0, EVENTS_TOGETHER_MAX);
      if (waiting.length === 0) return onState('idle');
      if (failureCount === 0) onState('sending');
      const posted = await post(waiting.map((entry) => entry.event));
      if (posted.kind === 'signed_out') return onState('signed_out');
      if (posted.kind === 'answered') {
        let settledCount = 0;
        for (const [index, { id }] of waiting.entries())
          if (await this.#settle(id, posted.results[index])) settledCount += 1;
        failureCount = settledCount > 0 ? 0 : failureCount;
        if (settledCount === waiting.length) continue;
        onState('clock_ahead');
      } else onState('retrying');
      await pause(pauseMs(failureCount, random()));
      failureCount += 1;
    }
  }

  /** An event from the future is not done with: the server will take it when its time has come. */
  async #settle(id: string, result: AppendResult | undefined): Promise<boolean> {
    if (result === undefined || result.refusal?.code === 'time_in_future') return false;
    const reasons = refusalReasons(result);
    await this.#options.log.settle(id, reasons);
    this.#options.onSettled(id, reasons);
    return true;
  }
}

/** How long to wait after so many failures: doubling, at most 15 s, half of it by chance so that tablets spread. */
export function pauseMs(failureCount: number, chance: number): number {
  const whole = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** failureCount);
  return Math.round(whole / 2 + (whole / 2) * chance);
}
