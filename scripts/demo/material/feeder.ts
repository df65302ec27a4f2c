import type { Stock } from '@/scripts/demo/material/store';
import type { World } from '@/scripts/demo/simulation/world';

/** Time that a machine stands while an item is changed, in milliseconds. */
const CHANGE_MS = [40_000, 100_000] as const;
/** Doubt about the time of a change that a tablet with a wrong clock scanned. */
const CLOCK_DOUBT_MS = 30_000;

/** Stations where reels are spliced instead of changed. */
const SPLICING: readonly string[] = ['L1-PLACE-2'];

/** A slot that parts are drawn from, with what stands in it. */
export class Feeder {
  readonly station: string;
  readonly slot: string;
  readonly #world: World;
  readonly #parts: readonly [string, ...string[]];
  #stock: Stock | null = null;

  constructor(options: {
    world: World;
    station: string;
    slot: string;
    parts: readonly [string, ...string[]];
  }) {
    this.station = options.station;
    this.slot = options.slot;
    this.#world = options.world;
    this.#parts = options.parts;
  }

  get stock(): Stock | null {
    return this.#stock;
  }

  /** Fills an empty slot, and sometimes one that is about to run out, before work begins; returns the time it takes. */
  prepare(pieces: number): number {
    const { random } = this.#world;
    const old = this.#stock;
    if (old !== null && (old.pieces >= pieces || random.chance(0.5))) return 0;
    this.swapTo(this.takeNext());
    if (old !== null) this.#writeOff(old);
    return random.between(...CHANGE_MS);
  }

  /** Takes pieces during a span; where they run out on the way, the next item is spliced in while the work goes on. */
  draw(work: { pieces: number; startMs: number; durationMs: number }): void {
    const { agenda, random } = this.#world;
    const old = this.#stock;
    if (old === null) throw new Error(`Nothing stands in ${this.station} ${this.slot}.`);
    if (old.pieces >= work.pieces) {
      old.pieces -= work.pieces;
      return;
    }
    const missing = work.pieces - old.pieces;
    agenda.at(work.startMs + work.durationMs * random.between(0.25, 0.8), () => {
      if (this.#stock !== old) return;
      const next = this.takeNext();
      next.pieces -= missing;
      if (SPLICING.includes(this.station)) this.#spliceTo(next, old);
      else this.swapTo(next);
      this.#writeOff(old);
    });
  }

  /** Takes an item for this slot out of the store; now and then one of a second source. */
  takeNext(): Stock {
    const { random, store } = this.#world;
    const second = this.#parts[1];
    const isSecond = second !== undefined && random.chance(0.3) && store.peek(second) !== null;
    return store.take(isSecond ? [second] : this.#parts);
  }

  /** Mounts an item over what stands in the slot, now; returns what stood there. */
  swapTo(stock: Stock, options: { isRecordedOnly?: boolean } = {}): Stock | null {
    const { old, scan } = this.changeUnscanned(stock, options);
    scan();
    return old;
  }

  /** Changes what stands in the slot, now, and tells nobody until it is scanned. */
  changeUnscanned(
    stock: Stock,
    options: { isRecordedOnly?: boolean } = {},
  ): { old: Stock | null; scan: () => void } {
    const old = this.#stock;
    this.#stock = stock;
    return { old, scan: () => this.#scanMount(stock, options) };
  }

  #scanMount(stock: Stock, options: { isRecordedOnly?: boolean }): void {
    const { journal, roster, doubtfulClocks } = this.#world;
    journal.write({
      type: 'item.mounted',
      station: this.station,
      operator: roster.onDuty('handler', this.station),
      ...(options.isRecordedOnly ? { gate: 'record' } : {}),
      ...(doubtfulClocks.has(this.station) ? { uncertaintyMs: CLOCK_DOUBT_MS } : {}),
      body: { item: stock.item, slot: this.slot },
    });
  }

  /** Joins the end of what stands in the slot to the next item, now. */
  #spliceTo(stock: Stock, old: Stock): void {
    const { journal, roster } = this.#world;
    this.#stock = stock;
    journal.write({
      type: 'item.spliced',
      station: this.station,
      operator: roster.onDuty('handler', this.station),
      body: { from: old.item, to: stock.item, slot: this.slot, greyUnits: 2 },
    });
  }

  /** Takes a part-used item out, counts it and puts it back on its shelf, now. */
  returnToStore(): void {
    const stock = this.unload();
    if (stock === null) return;
    this.#world.store.count(stock);
    this.#world.store.shelve(stock, { isPartUsed: true });
  }

  /** Takes out what stands in the slot, now. */
  unload(): Stock | null {
    const { journal, roster } = this.#world;
    const stock = this.#stock;
    if (stock === null) return null;
    this.#stock = null;
    journal.write({
      type: 'item.unmounted',
      station: this.station,
      operator: roster.onDuty('handler', this.station),
      body: { item: stock.item, slot: this.slot },
    });
    return stock;
  }

  #writeOff(stock: Stock): void {
    const { agenda, random, store } = this.#world;
    agenda.after(random.between(120_000, 900_000), () => store.retire(stock, 'Used up.'));
  }
}
