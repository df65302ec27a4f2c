import type { PlantFile } from '@/lib/domain/plant/plant-file';

/** The benchmark's one product, and the cabinet that some of its units are built into. */
export const PRODUCT = { number: 'WX4', revision: 'C' } as const;
export const CABINET = { number: 'CAB', revision: 'A' } as const;

/** A reel slot of a placement machine: the machine's place on the line, and the positions that it supplies. */
export type ReelSlot = {
  index: number;
  stationIndex: number;
  slot: string;
  part: string;
  positions: string[];
};

const MACHINES = 5;
const SLOTS_PER_MACHINE = 18;
const FIRST_MACHINE = 3;

const OPERATIONS = [
  ['L1-MARK', 'mark'],
  ['L1-PRINT', 'print'],
  ['L1-SPI', 'paste-inspection'],
  ...Array.from({ length: MACHINES }, (_, index) => [`L1-PLACE-${index + 1}`, `place-${index + 1}`] as const),
  ['L1-REFLOW', 'reflow'],
  ['L1-AOI', 'optical-inspection'],
  ['L1-XRAY', 'xray'],
  ['L1-HAND', 'hand-insertion'],
  ['L1-FLUX', 'flux'],
  ['L1-WAVE', 'wave'],
  ['L1-CLEAN', 'clean'],
  ['L1-VISUAL', 'visual'],
  ['L1-ASSEMBLY', 'assembly'],
  ['L1-TORQUE', 'torque'],
  ['L1-FUNCTION', 'function-test'],
  ['L1-LOAD', 'firmware'],
  ['L1-BENCH', 'bench-test'],
  ['L1-SAFETY', 'safety-test'],
  ['L1-LOOK', 'look-over'],
  ['L1-LABEL', 'label'],
  ['L1-PACK', 'pack-check'],
] as const;

/** The 25 stations in the order of the route. */
export const STATIONS = OPERATIONS.map(([code, operation]) => ({ code, operation }));

/** The 90 reel slots, machine after machine. */
export const REEL_SLOTS: readonly ReelSlot[] = Array.from(
  { length: MACHINES * SLOTS_PER_MACHINE },
  (_, index) => {
    const number = String(index).padStart(2, '0');
    return {
      index,
      stationIndex: FIRST_MACHINE + Math.floor(index / SLOTS_PER_MACHINE),
      slot: `1-${String((index % SLOTS_PER_MACHINE) + 1).padStart(2, '0')}`,
      part: `P-${number}`,
      positions: [`C${number}1`, `C${number}2`],
    };
  },
);

/** Slots for what touches every unit: a stencil, a jar of paste, a reflow profile. */
export const TOOL_SLOTS = [
  { stationIndex: 1, slot: 'stencil', holds: 'stencil', prefix: 'ST', unitsEach: 50_000 },
  { stationIndex: 1, slot: 'paste', holds: 'paste', prefix: 'PJ', unitsEach: 2_000 },
  { stationIndex: 8, slot: 'profile', holds: 'profile', prefix: 'PF', unitsEach: 1_000_000_000 },
] as const;

/** Plant of the benchmark: one line of 25 stations, five placement machines with 18 reel slots each. */
export function benchPlant(): PlantFile {
  return {
    stations: STATIONS.map(({ code, operation }, stationIndex) => ({
      code,
      line: 'L1',
      operation,
      slots: [
        ...REEL_SLOTS.filter((each) => each.stationIndex === stationIndex).map(({ slot }) => ({
          name: slot,
          holds: 'reel' as const,
        })),
        ...TOOL_SLOTS.filter((each) => each.stationIndex === stationIndex).map(({ slot, holds }) => ({
          name: slot,
          holds,
        })),
      ],
    })),
    products: [
      {
        ...PRODUCT,
        route: STATIONS.map(({ operation }, index) => ({ step: 10 * (index + 1), operation })),
        bom: REEL_SLOTS.map(({ stationIndex, slot, part, positions }) => ({
          part,
          positions,
          station: STATIONS[stationIndex]?.code ?? '',
          slot,
        })),
      },
      { ...CABINET, route: [] },
    ],
    operators: [{ badge: 'op-1', operations: STATIONS.map(({ operation }) => operation) }],
  };
}
