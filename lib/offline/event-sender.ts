import { type AppendResult, refusalReasons } from '@/lib/domain/events/append-answer';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { DeviceEntry, DeviceLog } from '@/lib/offline/device-log';
import type { Posted } from '@/lib/offline/post-events';

const EVENTS_TOGETHER_MAX = 100;
const FIRST_PAUSE_MS = 400;
const LONGEST_PAUSE_MS = 15_000;

/** What the sender is about. */
export type SenderState = 'idle' | 'sending' | 'retrying' | 'signed_out' | 'clock_ahead';

/** What the sender needs of its surroundings. */
export type SenderOptions = {
  log: DeviceLog;
  post: (events: readonly WireEvent[], badges: readonly string[]) => Promise<Posted>;
  onState: (state: SenderState) => void;
  /** Whether this page has made an event, and waits for its answer. */
  isOwn: (id: string) => boolean;
  /** An event was answered: null reasons for recorded. */
  onSettled: (id: string, reasons: Refusal[] | null) => void;
  /** A fact that came too late to be refused goes on under another id. */
  onRetold: (id: string, newId: string) => void;
  /** Runs work while no other tab runs its own. */
  alone: (work: () => Promise<void>) => Promise<void>;
  pause: (ms: number) => Promise<void>;
  /** From 0 to 1. */
  random: () => number;
};

/** Refusals that no judgement by the rules has made, and that telling the fact again would meet again. */
const NOT_BY_A_RULE: readonly string[] = [
  'malformed',
  'event_id_reused',
  'time_in_future',
  'device_seq_reused',
];

/**
 * Sends the device's events in order, again and again under the same ids, until the server has answered each. Only one
 * tab sends at a time. Whoever is signed in delivers what everyone at this device has done.
 */
export class EventSender {
  readonly #options: SenderOptions;
  /** Events that were sent in vain. */
  readonly #unanswered = new Set<string>();
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
    const { log, post, onState, pause, random } = this.#options;
    for (let failureCount = 0; ; ) {
      const entries = await log.entries();
      const waiting = entries.filter((entry) => entry.reasons === null).slice(0, EVENTS_TOGETHER_MAX);
      if (waiting.length === 0) return onState('idle');
      if (failureCount === 0) onState('sending');
      const badges = [...new Set(waiting.map((entry) => entry.badge))];
      const posted = await post(
        waiting.map((entry) => entry.event),
        badges,
      );
      if (posted.kind === 'signed_out') return onState('signed_out');
      if (posted.kind === 'answered') {
        const settledCount = await this.#settleAll(waiting, posted.results);
        failureCount = settledCount > 0 ? 0 : failureCount;
        if (settledCount === waiting.length) continue;
        onState('clock_ahead');
      } else {
        for (const { id } of waiting) this.#unanswered.add(id);
        onState('retrying');
      }
      await pause(pauseMs(failureCount, random()));
      failureCount += 1;
    }
  }

  /** Notes every answer; the number of events that are done with, or will be sent anew. */
  async #settleAll(
    waiting: readonly DeviceEntry[],
    results: readonly (AppendResult | undefined)[],
  ): Promise<number> {
    const isRestored = results.some((result) => result?.refusal?.code === 'device_seq_reused');
    let settledCount = 0;
    for (const [index, entry] of waiting.entries())
      if (await this.#settle(entry, results[index])) settledCount += 1;
    if (isRestored) await this.#options.log.becomeNew();
    return settledCount;
  }

  /** An event from the future is not done with: the server will take it when its time has come. */
  async #settle({ id, event }: DeviceEntry, result: AppendResult | undefined): Promise<boolean> {
    const { log, onSettled, onRetold } = this.#options;
    const code = result?.refusal?.code;
    if (result === undefined || code === 'time_in_future') return false;
    if (code === 'device_seq_reused') return true;
    if (code !== undefined && !NOT_BY_A_RULE.includes(code) && this.#isOld(event, id)) {
      const retold = await log.retell(id);
      if (retold !== null) onRetold(id, retold.id);
      return true;
    }
    const reasons = refusalReasons(result);
    await log.settle(id, reasons);
    onSettled(id, reasons);
    return true;
  }

  /**
   * Whether the operator has gone on without an answer: then the fact stays a fact, and is flagged. What is from before
   * this page may have been sent by another one.
   */
  #isOld(event: WireEvent, id: string): boolean {
    return event.gate !== 'record' && (this.#unanswered.has(id) || !this.#options.isOwn(id));
  }
}

/** How long to wait after so many failures: doubling, at most 15 s, half of it by chance so that tablets spread. */
export function pauseMs(failureCount: number, chance: number): number {
  const whole = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** failureCount);
  return Math.round(whole / 2 + (whole / 2) * chance);
}
