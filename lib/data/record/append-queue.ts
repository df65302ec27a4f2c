import type pg from 'pg';
import { type AppendOutcome, appendBatch, type Submitted } from '@/lib/data/record/append-batch';
import { KeptRecord } from '@/lib/data/record/kept-record';
import { asWriter, isSurprise, type Writing } from '@/lib/data/transaction';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { DeliveryJudgement } from '@/lib/domain/people/judge-delivery';

type Waiting = {
  events: readonly Submitted[];
  resolve: (outcomes: AppendOutcome[]) => void;
  reject: (error: unknown) => void;
};

type Sending = { judgeSender?: (event: LoggedEvent) => DeliveryJudgement; isNumberOnce?: boolean };
const MAY_SEND = (): DeliveryJudgement => ({ refusal: null, delivery: null });

/** Most events that one transaction takes together from several requests. */
const EVENTS_TOGETHER_MAX = 1000;

/**
 * The way into the log for one server process. Requests that arrive while a transaction is under way share the next
 * one, so many stations cost one commit; an answer is given only after the commit is durable. If a shared transaction
 * fails, each of its requests is tried alone, and if PostgreSQL cannot hold something in it, each of its events: one
 * cannot harm its neighbours.
 */
export class AppendQueue {
  readonly #pool: pg.Pool;
  readonly #clock: () => number;
  readonly #kept = new KeptRecord();
  readonly #onCommitted: () => void;
  #waiting: Waiting[] = [];
  #isRunning = false;

  /** `clock` gives microseconds since the epoch; `onCommitted` runs after every commit. */
  constructor(options: { pool: pg.Pool; clock: () => number; onCommitted?: () => void }) {
    this.#pool = options.pool;
    this.#clock = options.clock;
    this.#onCommitted = options.onCommitted ?? (() => undefined);
  }

  /** `judgeSender` says what the sender may not send; a retry of what is in the log is answered before it. */
  append(
    events: readonly LoggedEvent[],
    recordedBy: string,
    { judgeSender = MAY_SEND, isNumberOnce = false }: Sending = {},
  ): Promise<AppendOutcome[]> {
    const submitted = events.map((event) => ({ event, recordedBy, isNumberOnce, ...judgeSender(event) }));
    return new Promise((resolve, reject) => {
      this.#waiting.push({ events: submitted, resolve, reject });
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
      const outcomes = await this.#commit(together.flatMap(({ events }) => events));
      this.#onCommitted();
      for (const request of together) request.resolve(outcomes.splice(0, request.events.length));
    } catch (error) {
      const [only, ...others] = together;
      if (only === undefined) return;
      if (others.length > 0) for (const request of together) await this.#write([request]);
      else if (isUnstorable(error)) await this.#writeApart(only);
      else only.reject(error);
    }
  }

  /** One transaction for each event, so that the one that PostgreSQL cannot hold is found and the others are kept. */
  async #writeApart({ events, resolve, reject }: Waiting): Promise<void> {
    const outcomes: AppendOutcome[] = [];
    try {
      for (const event of events)
        outcomes.push(
          ...(await this.#commit([event]).catch((error: unknown): AppendOutcome[] => {
            if (isUnstorable(error)) return [{ outcome: 'unstorable' }];
            throw error;
          })),
        );
      resolve(outcomes);
    } catch (error) {
      reject(error);
    }
  }

  async #commit(events: readonly Submitted[]): Promise<AppendOutcome[]> {
    const kept = this.#kept;
    const append = (db: Writing) => appendBatch({ db, kept, recordedAtUs: this.#clock() }, events);
    try {
      const ids = events.map(({ event }) => event.id);
      return await asWriter(this.#pool, append, kept.expectation(ids));
    } catch (error) {
      kept.forget();
      // Another server wrote, or an event is a retry: nothing is written yet, and now it is looked up first.
      if (isSurprise(error)) return this.#commit(events);
      throw error;
    }
  }
}

// PostgreSQL: data exceptions, violated constraints and exceeded limits come from what was sent, and come again.
const UNSTORABLE_SQLSTATE = /^(22|23|54)/;

function isUnstorable(error: unknown): boolean {
  return error instanceof Error && 'code' in error && UNSTORABLE_SQLSTATE.test(String(error.code));
}
