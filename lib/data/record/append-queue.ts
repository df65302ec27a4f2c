import type pg from 'pg';
import { type AppendOutcome, appendBatch } from '@/lib/data/record/append-batch';
import { asWriter } from '@/lib/data/transaction';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

type Waiting = {
  events: readonly LoggedEvent[];
  recordedBy: string;
  resolve: (outcomes: AppendOutcome[]) => void;
  reject: (error: unknown) => void;
};

/** Most events that one transaction takes together from several requests. */
const EVENTS_TOGETHER_MAX = 1000;

/**
 * The way into the log for one server process. Requests that arrive while a transaction is under way share the next
 * one, so many stations cost one commit; an answer is given only after the commit is durable. If a shared transaction
 * fails, each of its requests is tried alone, so that one cannot harm its neighbours.
 */
export class AppendQueue {
  readonly #pool: pg.Pool;
  readonly #clock: () => number;
  #waiting: Waiting[] = [];
  #isRunning = false;

  /** `clock` gives microseconds since the epoch. */
  constructor(options: { pool: pg.Pool; clock: () => number }) {
    this.#pool = options.pool;
    this.#clock = options.clock;
  }

  append(events: readonly LoggedEvent[], recordedBy: string): Promise<AppendOutcome[]> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ events, recordedBy, resolve, reject });
      if (!this.#isRunning) void this.#run();
    });
  }

  async #run(): Promise<void> {
    this.#isRunning = true;
    for (let together = this.#take(); together.length > 0; together = this.#take())
      await this.#write(together);
    this.#isRunning = false;
  }

  #take(): Waiting[] {
    const together: Waiting[] = [];
    let eventCount = 0;
    for (const request of this.#waiting) {
      if (together.length > 0 && eventCount + request.events.length > EVENTS_TOGETHER_MAX) break;
      together.push(request);
      eventCount += request.events.length;
    }
    this.#waiting.splice(0, together.length);
    return together;
  }

  async #write(together: Waiting[]): Promise<void> {
    try {
      const outcomes = await asWriter(this.#pool, (client) => {
        const arriving = together.flatMap(({ events, recordedBy }) =>
          events.map((event) => ({ event, recordedBy })),
        );
        return appendBatch(client, arriving, this.#clock());
      });
      for (const request of together) request.resolve(outcomes.splice(0, request.events.length));
    } catch (error) {
      if (together.length === 1) {
        together[0]?.reject(error);
        return;
      }
      for (const request of together) await this.#write([request]);
    }
  }
}
