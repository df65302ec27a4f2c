import { Feeder } from '@/scripts/demo/material/feeder';
import { type FeederRow, PLACE_1_FEEDERS, PLACE_2_FEEDERS } from '@/scripts/demo/plant/feeders';
import { DRY_STORE_LEVEL, demoPart } from '@/scripts/demo/plant/parts';
import type { ProductCode } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { World } from '@/scripts/demo/simulation/world';

/** A placement machine with its feeders. */
export class Placer {
  readonly station: string;
  readonly #world: World;
  readonly #rows: readonly { row: FeederRow; feeder: Feeder }[];

  constructor(world: World, line: LineCode, machine: 1 | 2) {
    this.station = `${line}-PLACE-${machine}`;
    this.#world = world;
    const rows = machine === 1 ? PLACE_1_FEEDERS : PLACE_2_FEEDERS;
    this.#rows = rows.map((row) => ({
      row,
      feeder: new Feeder({ world, station: this.station, slot: row.slot, parts: row.parts }),
    }));
  }

  /** The feeder in a slot. */
  feeder(slot: string): Feeder {
    const found = this.#rows.find(({ row }) => row.slot === slot);
    if (found === undefined) throw new Error(`${this.station} has no slot ${slot}.`);
    return found.feeder;
  }

  /** Places a panel: fills feeders first, then draws; returns when placing begins and how long all of it takes. */
  place(product: ProductCode, boards: number): { startedMs: number; totalMs: number } {
    const { agenda, random } = this.#world;
    const needed = this.#rows.flatMap(({ row, feeder }) => {
      const pieces = (product === 'WX4' ? row.wx4 : row.psu2).length * boards;
      return pieces === 0 ? [] : [{ feeder, pieces }];
    });
    const waits = needed.map(({ feeder, pieces }) => feeder.prepare(pieces));
    const waitMs = Math.min(
      waits.reduce((sum, each) => sum + each, 0),
      20 * 60_000,
    );
    const startMs = agenda.nowMs + Math.round(waitMs);
    const durationMs = Math.round(random.between(150_000, 195_000));
    for (const { feeder, pieces } of needed) feeder.draw({ pieces, startMs, durationMs });
    return { startedMs: startMs, totalMs: startMs + durationMs - agenda.nowMs };
  }

  /** Brings part-used reels that must be kept dry back to the store. */
  returnMoistureSensitive(): void {
    for (const { row, feeder } of this.#rows)
      if (demoPart(row.parts[0]).floorLife === DRY_STORE_LEVEL) feeder.returnToStore();
  }
}
