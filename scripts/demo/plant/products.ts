import type { BomLine, ProductEntry } from '@/lib/domain/plant/plant-file';
import { type FeederRow, PLACE_1_FEEDERS, PLACE_2_FEEDERS } from '@/scripts/demo/plant/feeders';
import {
  ASSEMBLY_BINS,
  type LooseRow,
  PSU2_INSERTED,
  WAVE_SUPPLIES,
  WX4_ASSEMBLED,
  WX4_INSERTED,
} from '@/scripts/demo/plant/loose-parts';
import type { LineCode } from '@/scripts/demo/plant/stations';

/** The two products: the weather-station gateway and its power supply. */
export type ProductCode = 'WX4' | 'PSU2';

/** The revision that the plant builds of each. */
export const REVISIONS: Readonly<Record<ProductCode, string>> = { WX4: 'C', PSU2: 'B' };

function feederLines(
  station: string,
  feeders: readonly FeederRow[],
  positionsOf: (row: FeederRow) => readonly string[],
): BomLine[] {
  return feeders.flatMap((row) => {
    const positions = [...positionsOf(row)];
    if (positions.length === 0) return [];
    return row.parts.map((part) => ({ part, positions, station, slot: row.slot }));
  });
}

function wx4OnLine(line: LineCode): BomLine[] {
  return [
    ...feederLines(`${line}-PLACE-1`, PLACE_1_FEEDERS, (row) => row.wx4),
    ...feederLines(`${line}-PLACE-2`, PLACE_2_FEEDERS, (row) => row.wx4),
  ];
}

const looseLines = (rows: readonly LooseRow[]): BomLine[] =>
  rows.map(({ part, positions }) => ({ part, positions: [...positions] }));
const waveLines = (): BomLine[] => WAVE_SUPPLIES.map((supply) => ({ ...supply, station: 'WAVE-1' }));
const binLines = (station: string): BomLine[] =>
  ASSEMBLY_BINS.map(({ part, positions, slot }) => ({ part, positions: [...positions], station, slot }));

/** The gateway: placed on either line, with a PSU2 inside. */
export const WX4: ProductEntry = {
  number: 'WX4',
  revision: REVISIONS.WX4,
  serialPattern: '^WX4C[0-9]{7}$',
  route: [
    { step: 10, operation: 'print' },
    { step: 20, operation: 'spi' },
    { step: 30, operation: 'place-1' },
    { step: 40, operation: 'place-2' },
    { step: 50, operation: 'reflow', attempts: 1 },
    { step: 60, operation: 'aoi' },
    { step: 70, operation: 'xray', sample: 0.12 },
    { step: 80, operation: 'insertion' },
    { step: 90, operation: 'wave' },
    { step: 100, operation: 'inspection' },
    { step: 110, operation: 'assembly' },
    { step: 120, operation: 'function-test', attempts: 3 },
    { step: 125, operation: 'chamber', sample: 0.01 },
    { step: 130, operation: 'firmware', attempts: 2 },
  ],
  bom: [
    ...wx4OnLine('L1'),
    ...wx4OnLine('L2'),
    ...looseLines(WX4_INSERTED),
    ...waveLines(),
    ...binLines('ASSY-1'),
    ...binLines('ASSY-2'),
    ...looseLines(WX4_ASSEMBLED),
    { part: 'PCB-WX4-C' },
    { product: 'PSU2', positions: ['A1'] },
  ],
};

/** The power supply: placed on line 2 only. */
export const PSU2: ProductEntry = {
  number: 'PSU2',
  revision: REVISIONS.PSU2,
  serialPattern: '^PSU2B[0-9]{7}$',
  route: [
    { step: 10, operation: 'print' },
    { step: 20, operation: 'spi' },
    { step: 30, operation: 'place-1' },
    { step: 40, operation: 'reflow', attempts: 1 },
    { step: 50, operation: 'aoi' },
    { step: 60, operation: 'insertion' },
    { step: 70, operation: 'wave' },
    { step: 80, operation: 'psu-test', attempts: 3 },
  ],
  bom: [
    ...feederLines('L2-PLACE-1', PLACE_1_FEEDERS, (row) => row.psu2),
    ...looseLines(PSU2_INSERTED),
    ...waveLines(),
    { part: 'PCB-PSU2-B' },
  ],
};
