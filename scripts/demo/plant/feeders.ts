/** A feeder slot of a placement machine and what it supplies to each product. */
export type FeederRow = {
  /** Part numbers that may stand there; the first one is bought, the others are second sources. */
  parts: readonly [string, ...string[]];
  slot: string;
  wx4: readonly string[];
  psu2: readonly string[];
};

/** Designators of one letter, single or in runs: `positions('C', 1, [3, 5])` is C1, C3, C4, C5. */
function positions(letter: string, ...runs: (number | readonly [number, number])[]): string[] {
  return runs.flatMap((run) => {
    const [first, last] = typeof run === 'number' ? [run, run] : run;
    return Array.from({ length: last - first + 1 }, (_, index) => `${letter}${first + index}`);
  });
}

const NONE: readonly string[] = [];

function row(slot: string, part: string, wx4: readonly string[], psu2: readonly string[] = NONE): FeederRow {
  return { slot, parts: [part], wx4, psu2 };
}

/** First placement machine: chips; eight feeders serve both products. */
export const PLACE_1_FEEDERS: readonly FeederRow[] = [
  {
    ...row('1-01', 'C-100N-0402', positions('C', [1, 13], [17, 24]), positions('C', [1, 6])),
    parts: ['C-100N-0402', 'C-100N-0402-S2'],
  },
  row('1-02', 'C-1U-0402', positions('C', [25, 30]), positions('C', 7, 8)),
  {
    ...row('1-03', 'R-10K-0402', positions('R', [1, 12]), positions('R', [1, 4])),
    parts: ['R-10K-0402', 'R-10K-0402-S2'],
  },
  row('1-04', 'R-1K-0402', positions('R', [13, 20]), positions('R', 5, 6)),
  row('1-05', 'R-100R-0402', positions('R', [25, 28]), positions('R', 7)),
  row('1-06', 'LED-G-0603', positions('D', 1, 2), positions('D', 1)),
  row('1-07', 'C-4U7-0603', positions('C', [31, 34]), positions('C', 9, 10)),
  row('1-08', 'D-SCHOT-SOD323', positions('D', 3, 4), positions('D', 2, 3)),
  row('1-09', 'C-10U-0805', ['C14']),
  row('1-10', 'R-100K-0402', positions('R', 21, 22, 37)),
  row('1-11', 'R-4K7-0402', positions('R', 23, 24, 29, 30)),
  row('1-12', 'C-22P-0402', positions('C', 15, 16, 35, 36)),
  row('1-13', 'FB-600R-0603', positions('L', [2, 4])),
  row('1-14', 'R-0R-0603', positions('R', [31, 34])),
  row('1-15', 'D-TVS5-SOD323', positions('D', [5, 8])),
  row('1-16', 'C-10U-1210', NONE, positions('C', [15, 18])),
  row('1-17', 'R-20M-2512', NONE, ['R8']),
  row('1-18', 'Q-NFET-DPAK', NONE, positions('Q', 1, 2)),
  row('1-19', 'U-BUCK-24V', NONE, ['U1']),
  row('1-20', 'D-REC-SMC', NONE, positions('D', 4, 5)),
];

/** Second placement machine: large parts of the WX4. */
export const PLACE_2_FEEDERS: readonly FeederRow[] = [
  row('2-01', 'U-MCU-100', ['U1']),
  row('2-02', 'U-FLASH-64M', ['U2']),
  row('2-03', 'U-ETHPHY', ['U3']),
  row('2-04', 'U-RS485', ['U4']),
  row('2-05', 'U-BARO', ['U5']),
  row('2-06', 'U-HUMID', ['U6']),
  row('2-07', 'U-RADIO-868', ['U7']),
  row('2-08', 'U-RTC', ['U8']),
  row('2-09', 'U-LDO-3V3', ['U9']),
  row('2-10', 'U-OPAMP-2', positions('U', 10, 11)),
  row('2-11', 'Y-25M', ['Y1']),
  row('2-12', 'Y-32K', ['Y2']),
  row('2-13', 'L-10U-5X5', ['L1']),
  row('2-14', 'S-TACT', positions('S', 1, 2)),
  row('2-15', 'J-USB-C', ['J5']),
  row('2-16', 'J-RJ45', ['J6']),
  row('2-17', 'Q-PFET-SOT23', positions('Q', [1, 3])),
  row('2-18', 'F-1A-1206', ['F1']),
];
