import { Bench, leastLoaded } from '@/scripts/demo/benches/bench';
import { usedFrom } from '@/scripts/demo/benches/board-benches';
import type { Failures } from '@/scripts/demo/benches/failures';
import { Feeder } from '@/scripts/demo/material/feeder';
import { ASSEMBLY_BINS, WX4_ASSEMBLED } from '@/scripts/demo/plant/loose-parts';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

type Options = { world: World; failures: Failures; passed: (unit: DemoUnit) => void };

/** Final assembly: a gateway waits for a power supply; both go into one enclosure. */
export class AssemblyHall {
  readonly #world: World;
  readonly #benches: readonly [Bench, ...Bench[]];
  readonly #boards: DemoUnit[] = [];
  readonly #supplies: DemoUnit[] = [];

  constructor(options: Options) {
    this.#world = options.world;
    this.#benches = [this.#bench('ASSY-1', options), this.#bench('ASSY-2', options)];
  }

  /** Takes a finished board of either product. */
  push(unit: DemoUnit): void {
    (unit.product === 'PSU2' ? this.#supplies : this.#boards).push(unit);
    const board = this.#boards[0];
    const psu = this.#supplies[0];
    if (board === undefined || psu === undefined) return;
    this.#boards.shift();
    this.#supplies.shift();
    board.psu = psu;
    leastLoaded(this.#benches).push(board);
  }

  /** Takes a tested power supply out of the stock; null when there is none. */
  takeSupply(): DemoUnit | null {
    return this.#supplies.shift() ?? null;
  }

  /** Puts a power supply into a gateway, now. */
  join(unit: DemoUnit, station: string): void {
    const { journal, roster } = this.#world;
    if (unit.psu === null) throw new Error(`${unit.serial} came to ${station} without a power supply.`);
    journal.write({
      type: 'unit.joined',
      station,
      operator: roster.operatorAt(station),
      body: { unit: unit.psu.serial, into: unit.serial, position: 'A1' },
    });
  }

  #bench(station: string, { world, failures, passed }: Options): Bench {
    const bins = ASSEMBLY_BINS.map(({ slot, part, positions }) => ({
      pieces: positions.length,
      feeder: new Feeder({ world, station, slot, parts: [part] }),
    }));
    return new Bench({
      world,
      failures,
      station,
      seconds: [240, 320],
      prepare: (span) => {
        const waits = bins.map(({ feeder, pieces }) => feeder.prepare(pieces));
        for (const { feeder, pieces } of bins) feeder.draw({ pieces, ...span });
        return Math.min(
          waits.reduce((sum, each) => sum + each, 0),
          600_000,
        );
      },
      before: (unit) => this.join(unit, station),
      used: usedFrom(world, WX4_ASSEMBLED),
      passed,
    });
  }
}
