import { demoPart } from '@/scripts/demo/plant/parts';
import type { Journal } from '@/scripts/demo/simulation/journal';
import type { Random } from '@/scripts/demo/simulation/random';
import type { Roster } from '@/scripts/demo/simulation/roster';

/** A reel, a bag of loose parts or a jar, with what is left of it. */
export type Stock = { item: string; part: string; lot: string; pieces: number };

const FIRST_NUMBERS = { reel: 2001, lot: 501, paste: 301 };
const CODES = { reel: 'RL', lot: 'LB', paste: 'PJ' };

/** The store: what was received and is not in a slot. */
export class Store {
  readonly #journal: Journal;
  readonly #random: Random;
  readonly #roster: Roster;
  readonly #shelves = new Map<string, Stock[]>();
  readonly #next = { ...FIRST_NUMBERS };

  constructor(options: { journal: Journal; random: Random; roster: Roster }) {
    this.#journal = options.journal;
    this.#random = options.random;
    this.#roster = options.roster;
  }

  /** A supplier's lot number for a delivery of a part. */
  lotFor(part: string): string {
    const letters = [...demoPart(part).supplier].filter((letter) => /[A-Z]/.test(letter)).join('');
    return `${letters}-${this.#random.int(20000, 89999)}`;
  }

  /** Books in one packing of a part, now; `given` names it, otherwise it gets the next number. */
  receive(part: string, lot: string, given?: { item: string; pieces: number }): Stock {
    const { kind, pieces, supplier } = demoPart(part);
    const item = given?.item ?? this.#newCode(kind, part);
    const stock: Stock = { item, part, lot, pieces: given?.pieces ?? pieces };
    this.#journal.write({
      type: 'item.received',
      station: 'GOODS-IN',
      operator: this.#roster.onDuty('handler'),
      body: { item, kind, part, lot, supplier, quantity: stock.pieces },
    });
    return stock;
  }

  /** Puts something on its shelf; what is part-used is taken first. */
  shelve(stock: Stock, options: { isPartUsed: boolean }): void {
    const shelf = this.#shelf(stock.part);
    if (options.isPartUsed) shelf.unshift(stock);
    else shelf.push(stock);
  }

  /** Counts something by X-ray, now. */
  count(stock: Stock): void {
    this.#journal.write({
      type: 'item.counted',
      station: 'GOODS-IN',
      operator: this.#roster.onDuty('handler'),
      body: { item: stock.item, quantity: stock.pieces, method: 'x-ray' },
    });
  }

  /** Takes the next packing of one of the parts; an empty shelf is filled by an express delivery. */
  take(parts: readonly [string, ...string[]]): Stock {
    for (const part of parts) {
      const stock = this.#shelf(part).shift();
      if (stock !== undefined) return stock;
    }
    return this.receive(parts[0], this.lotFor(parts[0]));
  }

  /** The next packing of a part without taking it; null when the shelf is empty. */
  peek(part: string): Stock | null {
    return this.#shelf(part)[0] ?? null;
  }

  /** Pieces on the shelf of a part. */
  piecesOf(part: string): number {
    return this.#shelf(part).reduce((sum, stock) => sum + stock.pieces, 0);
  }

  /** Writes off what is used up, now. */
  retire(stock: Stock, reason: string): void {
    this.#journal.write({
      type: 'item.retired',
      operator: this.#roster.onDuty('handler'),
      body: { item: stock.item, reason },
    });
  }

  #newCode(kind: keyof typeof CODES, part: string): string {
    const number = this.#next[kind];
    this.#next[kind] += 1;
    const prefix = part.startsWith('PCB-') ? 'BL' : CODES[kind];
    return `${prefix}${String(number).padStart(6, '0')}`;
  }

  #shelf(part: string): Stock[] {
    const shelf = this.#shelves.get(part);
    if (shelf !== undefined) return shelf;
    const empty: Stock[] = [];
    this.#shelves.set(part, empty);
    return empty;
  }
}
