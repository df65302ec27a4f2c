/**
 * Story (a): the chip capacitors of one reel crack. It stood at line 1, came back part-used, and stands at line 2 on
 * the last two days, so its boards are everywhere: shipped, repaired, in stock, on the way.
 */
export const CRACKED_REEL = {
  reel: 'RL001187',
  /** A reel of the same lot, still sealed in the store. */
  siblingReel: 'RL001188',
  part: 'C-10U-0805',
  lot: 'BC-41187',
  position: 'C14',
  defect: 'CRACK',
  slot: '1-09',
  stations: ['L1-PLACE-1', 'L2-PLACE-1'],
} as const;

/** Story (b): a stencil went on printing beyond its limit of prints, and paste defects rose with it. */
export const WORN_STENCIL = {
  stencil: 'ST-WX4-01',
  successor: 'ST-WX4-03',
  station: 'L1-PRINT',
  slot: 'stencil',
  defect: 'LOW-PASTE',
  positions: ['U1', 'U3', 'J6'],
  /** Prints when the three weeks begin. */
  printsBefore: 790,
} as const;

/** Story (c): at a changeover a reel of 10 kΩ went into the slot for 100 kΩ; found three and a half hours later. */
export const WRONG_REEL = {
  reel: 'RL001642',
  part: 'R-10K-0402',
  lot: 'SP-50216',
  station: 'L1-PLACE-1',
  slot: '1-10',
  expectedPart: 'R-100K-0402',
  positions: ['R21', 'R22', 'R37'],
} as const;

/**
 * Story (d): a reel of flash memories was changed for another and scanned an hour and a half later. Nothing in the
 * record contradicts it but the counts, in the evening and the next morning.
 */
export const LATE_SCAN = {
  reel: 'RL001911',
  part: 'U-FLASH-64M',
  lot: 'LQ-77310',
  pieces: 400,
  line: 'L2',
  slot: '2-02',
} as const;
