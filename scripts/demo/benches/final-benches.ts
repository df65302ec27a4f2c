import { AssemblyHall } from '@/scripts/demo/benches/assembly-hall';
import { Bench, type BenchOptions, leastLoaded } from '@/scripts/demo/benches/bench';
import { isPickedFor } from '@/scripts/demo/benches/board-benches';
import type { Failures } from '@/scripts/demo/benches/failures';
import type { Fault } from '@/scripts/demo/benches/outcome';
import { nextOf } from '@/scripts/demo/simulation/calendar';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import { WorkCentre } from '@/scripts/demo/simulation/work-centre';
import type { World } from '@/scripts/demo/simulation/world';
import { CRACKED_REEL } from '@/scripts/demo/stories';

/** Hours (UTC) at which QA comes to sign off what has gathered. */
const SIGN_OFF_HOURS = [7.5, 10.5, 13.5, 15.75];

type Options = { world: World; failures: Failures; signed: (unit: DemoUnit) => void };

/** From the finished board to the signed unit: assembly, function test, chamber for a few, firmware, sign-off. */
export class FinalBenches {
  readonly hall: AssemblyHall;
  readonly #tests: readonly [Bench, ...Bench[]];

  constructor({ world, failures, signed }: Options) {
    const bench = (options: Omit<BenchOptions, 'world' | 'failures'>) =>
      new Bench({ world, failures, ...options });
    const signOff = signOffDesk(world, signed);
    const firmware = bench({
      station: 'FW-1',
      seconds: [45, 70],
      passed: (unit) => {
        const atMs = nextOf(world.calendar, SIGN_OFF_HOURS, world.agenda.nowMs);
        world.agenda.at(atMs, () => signOff.push(unit));
      },
    });
    const chamber = bench({
      station: 'CHAMBER-1',
      seconds: [36_000, 43_000],
      servers: 8,
      isAlwaysOpen: true,
      readings: () => [
        { name: 'hot', value: 45, unit: '°C' },
        { name: 'cold', value: 0, unit: '°C' },
      ],
      passed: (unit) => firmware.push(unit),
    });
    const test = (station: string) =>
      bench({
        station,
        seconds: [300, 420],
        isAlwaysOpen: true,
        readings: (_, fault) => testReadings(world, fault),
        passed: (unit) => {
          if (!unit.isReturned) (isPickedFor(unit, 'chamber') ? chamber : firmware).push(unit);
        },
      });
    this.#tests = [test('FT-1'), test('FT-2')];
    this.hall = new AssemblyHall({ world, failures, passed: (unit) => this.test(unit) });
  }

  /** Sends a unit to a test bench, for the first time or again. */
  test(unit: DemoUnit): void {
    leastLoaded(this.#tests).push(unit);
  }
}

function testReadings({ random }: World, fault: Fault | null) {
  const isCrack = fault?.code === CRACKED_REEL.defect;
  const isWeak = fault?.code === 'LOW-RANGE';
  const currentMa = isCrack ? random.between(310, 480) : random.between(84, 112);
  const levelDbm = isWeak ? random.between(2, 8) : random.between(12.6, 14.2);
  return [
    { name: 'supply-current', value: Math.round(currentMa), unit: 'mA', low: 60, high: 150 },
    { name: 'radio-level', value: Math.round(levelDbm * 10) / 10, unit: 'dBm', low: 11 },
  ];
}

/** Final sign-off: a person of QA answers for each unit. */
function signOffDesk(world: World, signed: (unit: DemoUnit) => void): WorkCentre<DemoUnit> {
  const { journal, random, roster } = world;
  return new WorkCentre<DemoUnit>({
    world,
    unitsOf: (unit) => [unit],
    begin: () => random.between(50_000, 85_000),
    finish: (unit) => {
      journal.write({
        type: 'unit.signed',
        station: 'QA-1',
        operator: roster.onDuty('qa'),
        body: { unit: unit.serial, meaning: 'Final inspection passed; released for shipment.' },
      });
      signed(unit);
    },
  });
}
