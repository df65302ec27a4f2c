/** A part that comes in lots and is fitted by hand, with its positions. */
export type LooseRow = { part: string; positions: readonly string[] };

/** Through-hole parts of the WX4, inserted by hand. */
export const WX4_INSERTED: readonly LooseRow[] = [
  { part: 'J-TB8', positions: ['J1', 'J2'] },
  { part: 'J-TB4', positions: ['J3'] },
  { part: 'J-BAT2', positions: ['J4'] },
  { part: 'J-HDR10', positions: ['J7'] },
  { part: 'K-REL12', positions: ['K1', 'K2'] },
  { part: 'C-SUPER-1F', positions: ['C40'] },
];

/** Through-hole parts of the PSU2. */
export const PSU2_INSERTED: readonly LooseRow[] = [
  { part: 'L-100U-THT', positions: ['L1'] },
  { part: 'C-470U-50V', positions: ['C20', 'C21'] },
  { part: 'J-PWR2', positions: ['J1'] },
];

/** What stands in the wave machine: both products draw it. */
export const WAVE_SUPPLIES: readonly { slot: string; part: string }[] = [
  { slot: 'flux', part: 'FLUX-NR26' },
  { slot: 'solder', part: 'SOLDER-SAC' },
];

/** Mechanical parts of the WX4, in numbered bins at each assembly bench. */
export const ASSEMBLY_BINS: readonly (LooseRow & { slot: string })[] = [
  { slot: 'bin-1', part: 'ENC-BASE', positions: ['M1'] },
  { slot: 'bin-2', part: 'ENC-LID', positions: ['M2'] },
  { slot: 'bin-3', part: 'GASKET-EPDM', positions: ['M3'] },
  { slot: 'bin-4', part: 'SCREW-M3X8', positions: ['M4', 'M5', 'M6', 'M7'] },
  { slot: 'bin-5', part: 'SCREW-M4X12', positions: ['M8', 'M9'] },
  { slot: 'bin-6', part: 'GLAND-M16', positions: ['M10', 'M11'] },
  { slot: 'bin-7', part: 'BRACKET-POLE', positions: ['M12'] },
  { slot: 'bin-8', part: 'VENT-PTFE', positions: ['M13'] },
];

/** Parts of the WX4 that the assembler scans. */
export const WX4_ASSEMBLED: readonly LooseRow[] = [
  { part: 'ANT-868', positions: ['X1'] },
  { part: 'BAT-LI-3V6', positions: ['B1'] },
  { part: 'CABLE-PSU6', positions: ['W1'] },
];
