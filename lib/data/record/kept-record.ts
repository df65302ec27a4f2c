import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { openRecordCache, type RecordCache } from '@/lib/data/record/record-cache';
import type { Expectation, Writing } from '@/lib/data/transaction';
import { indexPlant, type Plant } from '@/lib/domain/plant/plant';

/** Most entries that are kept from one turn to the next. */
const ENTRIES_MAX = 100_000;

const CLOSED: Queryable = { query: () => Promise.reject(new Error('There is no transaction to read in.')) };

/**
 * The part of the record that a writer has read and brought up to date, kept from one of its turns to the next: it
 * stays true as long as nobody else has had a turn between. A transaction that fails must `forget` it.
 */
export class KeptRecord {
  readonly cache: RecordCache;
  plant: Plant = indexPlant({});
  /** Whether any event may be flagged: a rule that it broke may have been put right since. */
  hasFlagged = false;
  #turn: number | null = null;
  #db = CLOSED;

  constructor() {
    this.cache = openRecordCache({ query: (text, values) => this.#db.query(text, values) });
  }

  /** What a next transaction with these new events takes for granted; nothing when nothing is kept. */
  expectation(freshIds: readonly string[]): Expectation | undefined {
    if (this.cache.entryCount() > ENTRIES_MAX) this.forget();
    return this.#turn === null ? undefined : { turn: this.#turn + 1, freshIds };
  }

  /** Goes on in a transaction that was begun with the expectation; false when there was none. */
  continueIn(db: Queryable): boolean {
    if (this.#turn === null) return false;
    this.#turn += 1;
    this.#db = db;
    // How long a splice's grey zone lasts depends on the units that have come since.
    this.cache.slots.forgetWhere(({ open }) => open.some(({ grey }) => grey !== null));
    return true;
  }

  /** Begins anew in a transaction that expects nothing. */
  async startIn(db: Queryable & Pick<Writing, 'turn'>): Promise<void> {
    this.#db = db;
    this.plant = (await loadPlant(db)).plant;
    this.#turn = await db.turn;
  }

  forget(): void {
    this.#turn = null;
    this.#db = CLOSED;
    this.cache.clear();
  }
}
