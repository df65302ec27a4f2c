import type { Failures } from '@/scripts/demo/benches/failures';
import { type Fault, outcomeOf } from '@/scripts/demo/benches/outcome';
import { type Work, writeResult } from '@/scripts/demo/benches/write-result';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import { WorkCentre } from '@/scripts/demo/simulation/work-centre';
import type { World } from '@/scripts/demo/simulation/world';

/** Time until a board reaches its next station, in milliseconds: boards are carried in magazines. */
export const TRANSPORT_MS = [4 * 60_000, 26 * 60_000] as const;

/** How a bench works on single boards. */
export type BenchOptions = {
  world: World;
  failures: Failures;
  station: string;
  /** Shortest and longest time for a board. */
  seconds: readonly [low: number, high: number];
  servers?: number;
  isAlwaysOpen?: boolean;
  /** Makes material ready and draws it; returns the time that takes, in milliseconds. */
  prepare?: (span: { startMs: number; durationMs: number }) => number;
  /** Records what comes before the result. */
  before?: (unit: DemoUnit) => void;
  /** Parts that are scanned for the board. */
  /** Share of results that are entered wrongly at first, and voided. */
  slips?: number;
  used?: (unit: DemoUnit) => NonNullable<Work['used']>;
  readings?: (unit: DemoUnit, fault: Fault | null) => NonNullable<Work['readings']>;
  passed: (unit: DemoUnit) => void;
};

/** A station for single boards: works, records the result, and sends the board on or to repair. */
export class Bench {
  readonly #options: BenchOptions;
  readonly #operation: string;
  readonly #startedMs = new Map<DemoUnit, number>();
  readonly #centre: WorkCentre<DemoUnit>;

  constructor(options: BenchOptions) {
    const { world, station, servers = 1, isAlwaysOpen = false } = options;
    this.#options = options;
    this.#operation = world.plant.station(station)?.operation ?? '';
    this.#centre = new WorkCentre<DemoUnit>({
      world,
      unitsOf: (unit) => [unit],
      begin: (unit) => this.#begin(unit),
      finish: (unit) => this.#finish(unit),
      servers,
      isAlwaysOpen,
    });
  }

  /** Boards waiting and worked on. */
  get load(): number {
    return this.#centre.load;
  }

  push(unit: DemoUnit): void {
    this.#centre.push(unit);
  }

  #begin(unit: DemoUnit): number {
    const { world, seconds, prepare } = this.#options;
    const { agenda, random } = world;
    const durationMs = Math.round(random.between(...seconds) * 1000);
    const waitMs = Math.round(prepare?.({ startMs: agenda.nowMs, durationMs }) ?? 0);
    this.#startedMs.set(unit, agenda.nowMs + waitMs);
    return waitMs + durationMs;
  }

  #finish(unit: DemoUnit): void {
    const { world, slips = 0 } = this.#options;
    if (slips > 0 && world.random.chance(slips)) this.#slip(unit);
    else this.#record(unit);
  }

  /** A fail is entered for a good board, voided by QA, and the board looked at again. */
  #slip(unit: DemoUnit): void {
    const { world, station } = this.#options;
    const { agenda, journal, roster } = world;
    unit.isInService = true;
    const fault: Fault = { code: 'BRIDGE', position: 'J2', cure: 'retry' };
    const event = writeResult(world, { unit, station, fault });
    agenda.after(75_000, () => {
      const reason = 'Entered for the wrong board.';
      journal.write({ type: 'event.voided', operator: roster.onDuty('qa'), body: { event, reason } });
    });
    agenda.after(120_000, () => {
      unit.isInService = false;
      this.#record(unit);
    });
  }

  #record(unit: DemoUnit): void {
    const { world, failures, station, before, used, readings, passed } = this.#options;
    const operation = this.#operation;
    before?.(unit);
    const fault = outcomeOf(world, unit, operation);
    const startedMs = this.#startedMs.get(unit);
    this.#startedMs.delete(unit);
    const event = writeResult(world, {
      unit,
      station,
      fault,
      ...(startedMs === undefined ? {} : { startedMs }),
      ...(used === undefined ? {} : { used: used(unit) }),
      ...(readings === undefined ? {} : { readings: readings(unit, fault) }),
    });
    if (fault === null) {
      failures.passed(unit, operation);
      world.agenda.after(world.random.between(...TRANSPORT_MS), () => passed(unit));
    } else failures.failed({ unit, operation, event, fault, again: () => this.push(unit) });
  }
}

/** The bench with the shorter queue. */
export function leastLoaded(benches: readonly [Bench, ...Bench[]]): Bench {
  return benches.reduce((best, bench) => (bench.load < best.load ? bench : best));
}
