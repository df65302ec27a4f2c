import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';
import { CRACKED_REEL, WORN_STENCIL, WRONG_REEL } from '@/scripts/demo/stories';

/** Something wrong on a board, and what helps. */
export type Fault = {
  code: string;
  position: string;
  note?: string;
  cure: 'retry' | 'touch-up' | 'new-supply' | 'scrap' | { replaceWith: string };
};

/** What a station found: nothing, or one fault. */
export type Outcome = Fault | null;

type Habit = { chance: number; faults: readonly Fault[] };

const retry = (code: string, position: string): Fault => ({ code, position, cure: 'retry' });
const touchUp = (code: string, position: string): Fault => ({ code, position, cure: 'touch-up' });
const replace = (code: string, position: string, part: string): Fault => ({
  code,
  position,
  cure: { replaceWith: part },
});

/** How often each operation fails a board in an ordinary week, and with what. */
const HABITS: Readonly<Record<string, Habit>> = {
  'WX4 spi': { chance: 0.01, faults: [retry('EXCESS-PASTE', 'U7'), retry('BRIDGED-PASTE', 'U1')] },
  'PSU2 spi': { chance: 0.008, faults: [retry('EXCESS-PASTE', 'U1')] },
  'WX4 aoi': {
    chance: 0.02,
    faults: [
      touchUp('BRIDGE', 'U1'),
      touchUp('SHIFTED', 'U5'),
      touchUp('SHIFTED', 'L3'),
      replace('TOMBSTONE', 'R15', 'R-1K-0402'),
      replace('MISSING', 'R33', 'R-0R-0603'),
      replace('POLARITY', 'D5', 'D-TVS5-SOD323'),
    ],
  },
  'PSU2 aoi': {
    chance: 0.014,
    faults: [touchUp('BRIDGE', 'U1'), replace('TOMBSTONE', 'R5', 'R-1K-0402')],
  },
  'WX4 xray': { chance: 0.03, faults: [touchUp('VOIDS', 'U3'), touchUp('VOIDS', 'U7')] },
  'WX4 inspection': {
    chance: 0.028,
    faults: [
      touchUp('BRIDGE', 'J1'),
      touchUp('POOR-FILL', 'K1'),
      touchUp('POOR-FILL', 'J2'),
      replace('DAMAGED', 'K2', 'K-REL12'),
      { code: 'BROKEN-BOARD', position: 'PCB', cure: 'scrap' },
    ],
  },
  'WX4 function-test': {
    chance: 0.018,
    faults: [
      retry('NO-LINK', 'J6'),
      touchUp('NO-LINK', 'U3'),
      replace('LOW-RANGE', 'U7', 'U-RADIO-868'),
      replace('OUT-OF-LIMIT', 'U5', 'U-BARO'),
      replace('RAIL-LOW', 'U9', 'U-LDO-3V3'),
      replace('NO-SWITCH', 'K1', 'K-REL12'),
      { code: 'SUPPLY-NOISE', position: 'A1', cure: 'new-supply' },
    ],
  },
  'WX4 firmware': { chance: 0.006, faults: [retry('VERIFY', 'U2')] },
  'PSU2 psu-test': {
    chance: 0.015,
    faults: [
      replace('OUT-LOW', 'U1', 'U-BUCK-24V'),
      replace('RIPPLE', 'C20', 'C-470U-50V'),
      retry('OUT-LOW', 'J1'),
      { code: 'NO-OUTPUT', position: 'U1', cure: 'scrap' },
    ],
  },
};

/** Parts that the repair bench keeps for itself. */
export const REPAIR_PARTS: readonly string[] = [
  CRACKED_REEL.part,
  WRONG_REEL.expectedPart,
  ...new Set(
    Object.values(HABITS).flatMap(({ faults }) =>
      faults.flatMap(({ cure }) => (typeof cure === 'object' ? [cure.replaceWith] : [])),
    ),
  ),
];

/** What an operation finds on a board now; a second try mostly passes. */
export function outcomeOf(world: World, unit: DemoUnit, operation: string): Outcome {
  const { random } = world;
  const fails = unit.tries.get(operation) ?? 0;
  if (operation === 'function-test' && unit.crack === 'at-test') return crackFault();
  if (fails === 0 && unit.stencilWear > 0) {
    const wearChance = { spi: 0.13, aoi: 0.05 }[operation] ?? 0;
    if (random.chance(wearChance * unit.stencilWear))
      return {
        code: WORN_STENCIL.defect,
        position: random.pick(WORN_STENCIL.positions),
        cure: operation === 'spi' ? 'retry' : 'touch-up',
      };
  }
  const habit = HABITS[`${unit.product} ${operation}`];
  if (habit === undefined) return null;
  const chance = fails === 0 ? habit.chance : 0.16;
  return random.chance(chance) ? random.pick(habit.faults) : null;
}

/** The fault that a cracked capacitor shows. */
function crackFault(): Fault {
  const { defect, position, part } = CRACKED_REEL;
  return {
    code: defect,
    position,
    note: 'Crack under the end cap, found by current.',
    cure: { replaceWith: part },
  };
}
