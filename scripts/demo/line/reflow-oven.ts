import type { ProductCode } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { World } from '@/scripts/demo/simulation/world';

/** The profile that a line's oven runs for a product. */
export function profileFor(line: LineCode, product: ProductCode): string {
  return `PROF-${product}-${line}`;
}

/** The oven of a line: one profile at a time, made for the product. */
export class ReflowOven {
  readonly #world: World;
  readonly #line: LineCode;
  #product: ProductCode | null = null;

  constructor(world: World, line: LineCode) {
    this.#world = world;
    this.#line = line;
  }

  /** Loads the profile of a product; returns the time the oven takes to settle, in milliseconds. */
  prepare(product: ProductCode): number {
    if (this.#product === product) return 0;
    const { journal, roster } = this.#world;
    const isFirst = this.#product === null;
    this.#product = product;
    const station = `${this.#line}-REFLOW`;
    journal.write({
      type: 'item.mounted',
      station,
      operator: roster.operatorAt(station),
      body: { item: profileFor(this.#line, product), slot: 'profile' },
    });
    return isFirst ? 60_000 : 600_000;
  }
}
