import type { Stock } from '@/scripts/demo/material/store';
import type { World } from '@/scripts/demo/simulation/world';

/** Loose parts that somebody takes from an open bag and scans. */
export class LotSupply {
  readonly #world: World;
  readonly #part: string;
  #stock: Stock | null = null;

  constructor(world: World, part: string) {
    this.#world = world;
    this.#part = part;
  }

  /** Takes pieces and says from which bag; an empty bag is thrown away and the next one opened. */
  take(pieces: number): string {
    const { store } = this.#world;
    if (this.#stock === null || this.#stock.pieces < pieces) {
      const old = this.#stock;
      this.#stock = store.take([this.#part]);
      if (old !== null) store.retire(old, 'Used up.');
    }
    this.#stock.pieces -= pieces;
    return this.#stock.item;
  }
}
