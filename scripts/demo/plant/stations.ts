import type { StationEntry } from '@/lib/domain/plant/plant-file';
import { PLACE_1_FEEDERS, PLACE_2_FEEDERS } from '@/scripts/demo/plant/feeders';
import { ASSEMBLY_BINS, WAVE_SUPPLIES } from '@/scripts/demo/plant/loose-parts';

const LINES = ['L1', 'L2'] as const;
/** One of the two placement lines. */
export type LineCode = (typeof LINES)[number];

const TEST_SLOTS: StationEntry['slots'] = [
  { name: 'fixture', holds: 'fixture' },
  { name: 'program', holds: 'firmware' },
];

function placementLine(line: LineCode): StationEntry[] {
  const station = (name: string, operation: string, slots?: StationEntry['slots']): StationEntry => ({
    code: `${line}-${name}`,
    line,
    operation,
    ...(slots === undefined ? {} : { slots }),
  });
  return [
    station('MARK', 'mark'),
    station('PRINT', 'print', [
      { name: 'stencil', holds: 'stencil' },
      { name: 'paste', holds: 'paste' },
      { name: 'squeegee', holds: 'squeegee' },
    ]),
    station('SPI', 'spi'),
    station(
      'PLACE-1',
      'place-1',
      PLACE_1_FEEDERS.map(({ slot }) => ({ name: slot, holds: 'reel' })),
    ),
    station(
      'PLACE-2',
      'place-2',
      PLACE_2_FEEDERS.map(({ slot }) => ({ name: slot, holds: 'reel' })),
    ),
    station('REFLOW', 'reflow', [{ name: 'profile', holds: 'profile' }]),
    station('AOI', 'aoi'),
  ];
}

function shared(line: string, code: string, operation: string, slots?: StationEntry['slots']): StationEntry {
  return { code, line, operation, ...(slots === undefined ? {} : { slots }) };
}

const BINS: StationEntry['slots'] = ASSEMBLY_BINS.map(({ slot }) => ({ name: slot, holds: 'lot' }));

/** Every station of the demo's plant. */
export const STATIONS: readonly StationEntry[] = [
  ...LINES.flatMap(placementLine),
  shared('BOARD', 'XRAY-1', 'xray'),
  shared('BOARD', 'INS-1', 'insertion'),
  shared('BOARD', 'INS-2', 'insertion'),
  shared('BOARD', 'INS-3', 'insertion'),
  shared('BOARD', 'WAVE-1', 'wave', [
    ...WAVE_SUPPLIES.map(({ slot }) => ({ name: slot, holds: 'lot' as const })),
    { name: 'profile', holds: 'profile' },
  ]),
  shared('BOARD', 'INSPECT-1', 'inspection'),
  shared('BOARD', 'INSPECT-2', 'inspection'),
  shared('BOARD', 'REWORK-1', 'repair'),
  shared('FINAL', 'ASSY-1', 'assembly', BINS),
  shared('FINAL', 'ASSY-2', 'assembly', BINS),
  shared('TEST', 'PT-1', 'psu-test', TEST_SLOTS),
  shared('TEST', 'FT-1', 'function-test', TEST_SLOTS),
  shared('TEST', 'FT-2', 'function-test', TEST_SLOTS),
  shared('TEST', 'CHAMBER-1', 'chamber'),
  shared('TEST', 'FW-1', 'firmware', [{ name: 'image', holds: 'firmware' }]),
  shared('PACK', 'QA-1', 'sign-off'),
  shared('PACK', 'PACK-1', 'pack'),
  shared('PACK', 'PACK-2', 'pack'),
  shared('STORE', 'GOODS-IN', 'goods-in'),
  shared('RETURNS', 'RETURNS-1', 'returns'),
];

/** The tablet at a station, whose events are numbered; machines send without numbers. */
export const DEVICES: ReadonlyMap<string, string> = new Map([
  ['INS-1', 'tab-3'],
  ['INS-2', 'tab-4'],
  ['INSPECT-1', 'tab-5'],
  ['INSPECT-2', 'tab-6'],
  ['ASSY-1', 'tab-7'],
  ['ASSY-2', 'tab-8'],
  ['PACK-1', 'tab-11'],
  ['PACK-2', 'tab-12'],
  ['RETURNS-1', 'tab-14'],
]);
