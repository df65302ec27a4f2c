import type { Stock } from '@/scripts/demo/material/store';
import type { ProductCode } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { World } from '@/scripts/demo/simulation/world';

/** Prints that a stencil at this plant is good for (common practice: 1,000 to 10,000; no source). */
export const STENCIL_PRINTS_MAX = 1500;
/** Prints beyond the limit after which a stencil is as bad as it gets. */
const WEAR_PRINTS = 400;
const JAR_OPEN_MS = 6.5 * 3_600_000;
const MINUTE_MS = 60_000;

/** A stencil with the panels it has printed. */
export type Stencil = { item: string; prints: number };

/** The stencil, paste and squeegee of a line's printer. */
export class Printer {
  readonly station: string;
  readonly #world: World;
  readonly #stencils: Record<ProductCode, Stencil>;
  #product: ProductCode | null = null;
  #jar: { stock: Stock; openedMs: number } | null = null;

  constructor(world: World, line: LineCode, stencils: Record<ProductCode, Stencil>) {
    this.station = `${line}-PRINT`;
    this.#world = world;
    this.#stencils = stencils;
  }

  /** Makes the printer ready for a product; returns the time it takes, in milliseconds. */
  prepare(product: ProductCode): number {
    const change = this.#product === product ? 0 : this.#changeProduct(product);
    return change + this.#freshPaste();
  }

  /** Counts a print; returns the wear of the stencil, 0 up to its limit. */
  print(product: ProductCode): number {
    const stencil = this.#stencils[product];
    stencil.prints += 1;
    return Math.min(1, Math.max(0, (stencil.prints - STENCIL_PRINTS_MAX) / WEAR_PRINTS));
  }

  stencilFor(product: ProductCode): Stencil {
    return this.#stencils[product];
  }

  /** Puts another stencil for a product into the printer, now. */
  replaceStencil(product: ProductCode, stencil: Stencil): void {
    this.#stencils[product] = stencil;
    this.mount('stencil', stencil.item);
  }

  /** Inspects the stencil of a product, now: its tension and how often it printed. */
  inspect(product: ProductCode): void {
    const { journal, random, roster } = this.#world;
    const { item, prints } = this.#stencils[product];
    const tension = Math.round(10 * (48 - prints / 160 + random.between(-0.8, 0.8))) / 10;
    journal.write({
      type: 'item.inspected',
      station: this.station,
      operator: roster.onDuty('handler', this.station),
      body: {
        item,
        result: prints > STENCIL_PRINTS_MAX ? 'fail' : 'pass',
        readings: [
          { name: 'tension', value: tension, unit: 'N/cm', low: 35 },
          { name: 'prints', value: prints, high: STENCIL_PRINTS_MAX },
        ],
      },
    });
  }

  mount(slot: string, item: string): void {
    const { journal, roster } = this.#world;
    const operator = roster.onDuty('handler', this.station);
    journal.write({ type: 'item.mounted', station: this.station, operator, body: { item, slot } });
  }

  #changeProduct(product: ProductCode): number {
    const { agenda, journal, roster } = this.#world;
    const old = this.#product;
    this.#product = product;
    if (old === null) {
      this.mount('stencil', this.#stencils[product].item);
      return MINUTE_MS;
    }
    const { item } = this.#stencils[old];
    const operator = roster.onDuty('handler', this.station);
    agenda.after(2 * MINUTE_MS, () =>
      journal.write({
        type: 'item.unmounted',
        station: this.station,
        operator,
        body: { item, slot: 'stencil' },
      }),
    );
    agenda.after(5 * MINUTE_MS, () => this.inspect(old));
    agenda.after(9 * MINUTE_MS, () => this.mount('stencil', this.#stencils[product].item));
    return 16 * MINUTE_MS;
  }

  #freshPaste(): number {
    const { agenda, random, store } = this.#world;
    if (this.#jar !== null && agenda.nowMs - this.#jar.openedMs < JAR_OPEN_MS) return 0;
    const old = this.#jar?.stock;
    const stock = store.take(['PASTE-SAC-T4']);
    this.#jar = { stock, openedMs: agenda.nowMs };
    this.mount('paste', stock.item);
    if (old !== undefined) agenda.after(10 * MINUTE_MS, () => store.retire(old, 'Open too long.'));
    return random.between(2, 4) * MINUTE_MS;
  }
}
