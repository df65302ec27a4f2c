import { isPicked } from '@/lib/domain/units/sample';
import { Bench, type BenchOptions, leastLoaded } from '@/scripts/demo/benches/bench';
import type { Failures } from '@/scripts/demo/benches/failures';
import { Feeder } from '@/scripts/demo/material/feeder';
import { LotSupply } from '@/scripts/demo/material/lot-supply';
import { type LooseRow, PSU2_INSERTED, WAVE_SUPPLIES, WX4_INSERTED } from '@/scripts/demo/plant/loose-parts';
import { WX4 } from '@/scripts/demo/plant/products';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

/** Carriers that take boards through the wave. */
export const CARRIERS: readonly string[] = Array.from(
  { length: 24 },
  (_, index) => `CAR-${String(index + 1).padStart(2, '0')}`,
);

type Options = { world: World; failures: Failures; boardDone: (unit: DemoUnit) => void };

/** From the line to the finished board: X-ray of a sample, hand insertion, wave, inspection; power supplies are tested. */
export class BoardBenches {
  readonly #xray: Bench;
  readonly #insertion: readonly [Bench, ...Bench[]];
  readonly #psuInsertion: Bench;

  constructor({ world, failures, boardDone }: Options) {
    const bench = (options: Omit<BenchOptions, 'world' | 'failures'>) =>
      new Bench({ world, failures, ...options });
    const inspect = (station: string) =>
      bench({ station, seconds: [110, 190], slips: 0.002, passed: boardDone });
    const inspection = [inspect('INSPECT-1'), inspect('INSPECT-2')] as const;
    const psuTest = bench({
      station: 'PT-1',
      seconds: [95, 135],
      readings: (_, fault) => [
        {
          name: 'output',
          value: round(
            fault?.code === 'OUT-LOW' ? world.random.between(9.1, 11.2) : world.random.between(11.9, 12.1),
          ),
          unit: 'V',
          low: 11.7,
          high: 12.3,
        },
      ],
      passed: boardDone,
    });
    const wave = waveBench(world, bench, (unit) =>
      unit.product === 'PSU2' ? psuTest.push(unit) : leastLoaded(inspection).push(unit),
    );
    const insert = (station: string, rows: readonly LooseRow[]) =>
      bench({ station, seconds: [140, 200], used: usedFrom(world, rows), passed: (unit) => wave.push(unit) });
    this.#insertion = [insert('INS-1', WX4_INSERTED), insert('INS-2', WX4_INSERTED)];
    this.#psuInsertion = insert('INS-3', PSU2_INSERTED);
    this.#xray = bench({ station: 'XRAY-1', seconds: [200, 280], passed: (unit) => this.#insert(unit) });
  }

  /** Takes a board from its line. */
  push(unit: DemoUnit): void {
    if (unit.product === 'PSU2') this.#psuInsertion.push(unit);
    else if (isPickedFor(unit, 'xray')) this.#xray.push(unit);
    else this.#insert(unit);
  }

  #insert(unit: DemoUnit): void {
    leastLoaded(this.#insertion).push(unit);
  }
}

/** Whether a gateway owes a sampled operation; its serial decides. */
export function isPickedFor(unit: DemoUnit, operation: string): boolean {
  const step = WX4.route?.find((each) => each.operation === operation);
  return step !== undefined && isPicked(unit.serial, WX4, step);
}

/** Takes loose parts from open bags and says which. */
export function usedFrom(world: World, rows: readonly LooseRow[]): NonNullable<BenchOptions['used']> {
  const supplies = rows.map((row) => ({ row, supply: new LotSupply(world, row.part) }));
  return () =>
    supplies.map(({ row: { positions }, supply }) => ({
      item: supply.take(positions.length),
      positions: [...positions],
      quantity: positions.length,
    }));
}

function waveBench(
  world: World,
  bench: (options: Omit<BenchOptions, 'world' | 'failures'>) => Bench,
  passed: (unit: DemoUnit) => void,
): Bench {
  const feeders = WAVE_SUPPLIES.map(
    ({ slot, part }) => new Feeder({ world, station: 'WAVE-1', slot, parts: [part] }),
  );
  return bench({
    station: 'WAVE-1',
    seconds: [70, 90],
    servers: 2,
    prepare: (span) => {
      const waits = feeders.map((feeder) => feeder.prepare(1));
      for (const feeder of feeders) feeder.draw({ pieces: 1, ...span });
      return waits.reduce((sum, each) => sum + each, 0);
    },
    used: () => [{ item: world.random.pick(CARRIERS) }],
    passed,
  });
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
