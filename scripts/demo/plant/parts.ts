import type { PartEntry } from '@/lib/domain/plant/plant-file';

/** How a part is bought: in what packing, how many pieces in one, and from whom. */
export type DemoPart = PartEntry & { kind: 'reel' | 'lot' | 'paste'; pieces: number; supplier: string };

const SARN = 'Sarn Passives';
const BRACKWATER = 'Brackwater Components';
const LINDQVALE = 'Lindqvale Semiconductors';
const OAKHOLLOW = 'Oakhollow Connectors';
const MERRIDEN = 'Merriden Metalwork';
const FENNICK = 'Fennick Boards';
const GULLSTONE = 'Gullstone Process Materials';

/** What a placement machine loses of expensive parts; their reels are counted whenever they go to the dry store. */
const LOST_AT_PICK_UP = 0.01;
/** Moisture sensitivity level from which a reel goes to the dry store whenever it is not in use. */
export const DRY_STORE_LEVEL: NonNullable<PartEntry['floorLife']> = '3';

type Row = readonly [
  number: string,
  description: string,
  pieces: number,
  supplier: string,
  floorLife?: PartEntry['floorLife'],
];

const REELS: readonly Row[] = [
  ['C-100N-0402', 'Capacitor 100 nF 16 V X7R 0402', 10000, SARN],
  ['C-100N-0402-S2', 'Capacitor 100 nF 16 V X7R 0402, second source', 10000, BRACKWATER],
  ['C-1U-0402', 'Capacitor 1 µF 10 V X5R 0402', 4000, SARN],
  ['R-10K-0402', 'Resistor 10 kΩ 1 % 0402', 5000, SARN],
  ['R-10K-0402-S2', 'Resistor 10 kΩ 1 % 0402, second source', 5000, BRACKWATER],
  ['R-1K-0402', 'Resistor 1 kΩ 1 % 0402', 5000, SARN],
  ['R-100R-0402', 'Resistor 100 Ω 1 % 0402', 2500, SARN],
  ['LED-G-0603', 'Light-emitting diode, green, 0603', 2000, LINDQVALE, '2a'],
  ['C-4U7-0603', 'Capacitor 4.7 µF 10 V X5R 0603', 2000, SARN],
  ['D-SCHOT-SOD323', 'Schottky diode 30 V 0.5 A SOD-323', 1500, LINDQVALE],
  ['C-10U-0805', 'Capacitor 10 µF 25 V X5R 0805', 500, BRACKWATER],
  ['R-100K-0402', 'Resistor 100 kΩ 1 % 0402', 1500, SARN],
  ['R-4K7-0402', 'Resistor 4.7 kΩ 1 % 0402', 2000, SARN],
  ['C-22P-0402', 'Capacitor 22 pF 50 V C0G 0402', 2000, SARN],
  ['FB-600R-0603', 'Ferrite bead 600 Ω at 100 MHz 0603', 1500, SARN],
  ['R-0R-0603', 'Link 0 Ω 0603', 2500, SARN],
  ['D-TVS5-SOD323', 'Surge suppressor 5 V SOD-323', 2000, LINDQVALE],
  ['C-10U-1210', 'Capacitor 10 µF 50 V X7R 1210', 1500, BRACKWATER],
  ['R-20M-2512', 'Shunt 20 mΩ 1 % 2512', 500, SARN],
  ['Q-NFET-DPAK', 'Transistor, N-channel 60 V, DPAK', 1000, LINDQVALE, '1'],
  ['U-BUCK-24V', 'Step-down controller 24 V', 500, LINDQVALE, '3'],
  ['D-REC-SMC', 'Rectifier 100 V 3 A SMC', 1000, LINDQVALE],
  ['U-MCU-100', 'Microcontroller, 100 pins', 250, LINDQVALE, '3'],
  ['U-FLASH-64M', 'Flash memory 64 Mbit', 400, LINDQVALE, '3'],
  ['U-ETHPHY', 'Ethernet transceiver, QFN-32', 400, LINDQVALE, '3'],
  ['U-RS485', 'RS-485 transceiver SO-8', 500, LINDQVALE, '2a'],
  ['U-BARO', 'Barometric pressure sensor', 250, LINDQVALE, '3'],
  ['U-HUMID', 'Humidity sensor', 250, LINDQVALE, '3'],
  ['U-RADIO-868', 'Radio module 868 MHz', 250, LINDQVALE, '3'],
  ['U-RTC', 'Real-time clock SO-8', 500, LINDQVALE, '2a'],
  ['U-LDO-3V3', 'Regulator 3.3 V SOT-223', 500, LINDQVALE],
  ['U-OPAMP-2', 'Operational amplifier, dual, SO-8', 1000, LINDQVALE],
  ['Y-25M', 'Crystal 25 MHz', 500, SARN],
  ['Y-32K', 'Crystal 32.768 kHz', 500, SARN],
  ['L-10U-5X5', 'Inductor 10 µH 5 × 5 mm', 400, SARN],
  ['S-TACT', 'Push button, tactile', 800, OAKHOLLOW],
  ['J-USB-C', 'Connector USB-C', 400, OAKHOLLOW],
  ['J-RJ45', 'Connector RJ45 with magnetics', 250, OAKHOLLOW],
  ['Q-PFET-SOT23', 'Transistor, P-channel 20 V, SOT-23', 1500, LINDQVALE],
  ['F-1A-1206', 'Fuse 1 A 1206', 500, OAKHOLLOW],
];

const LOTS: readonly Row[] = [
  ['PCB-WX4-C', 'Bare board WX4 revision C, two in a panel', 400, FENNICK],
  ['PCB-PSU2-B', 'Bare board PSU2 revision B, four in a panel', 480, FENNICK],
  ['J-TB8', 'Terminal block, 8 poles', 600, OAKHOLLOW],
  ['J-TB4', 'Terminal block, 4 poles', 400, OAKHOLLOW],
  ['J-BAT2', 'Battery connector, 2 poles', 500, OAKHOLLOW],
  ['J-HDR10', 'Pin header, 10 poles', 500, OAKHOLLOW],
  ['K-REL12', 'Relay 12 V, changeover', 500, OAKHOLLOW],
  ['C-SUPER-1F', 'Double-layer capacitor 1 F', 300, BRACKWATER],
  ['L-100U-THT', 'Inductor 100 µH 5 A', 400, SARN],
  ['C-470U-50V', 'Electrolytic capacitor 470 µF 50 V', 800, BRACKWATER],
  ['J-PWR2', 'Power connector, 2 poles', 500, OAKHOLLOW],
  ['FLUX-NR26', 'No-rinse flux', 900, GULLSTONE],
  ['SOLDER-SAC', 'Solder bar, lead-free', 1400, GULLSTONE],
  ['ENC-BASE', 'Enclosure base, die-cast', 200, MERRIDEN],
  ['ENC-LID', 'Enclosure lid', 200, MERRIDEN],
  ['GASKET-EPDM', 'Gasket', 500, MERRIDEN],
  ['SCREW-M3X8', 'Screw M3 × 8, stainless', 2000, MERRIDEN],
  ['SCREW-M4X12', 'Screw M4 × 12, stainless', 1000, MERRIDEN],
  ['GLAND-M16', 'Cable gland M16', 600, MERRIDEN],
  ['BRACKET-POLE', 'Bracket for a pole', 250, MERRIDEN],
  ['VENT-PTFE', 'Pressure vent', 500, MERRIDEN],
  ['ANT-868', 'Antenna 868 MHz', 250, OAKHOLLOW],
  ['BAT-LI-3V6', 'Lithium cell 3.6 V', 300, BRACKWATER],
  ['CABLE-PSU6', 'Cable PSU2 to main board, 6 wires', 300, OAKHOLLOW],
];

const PASTES: readonly Row[] = [['PASTE-SAC-T4', 'Solder paste, lead-free, type 4', 1, GULLSTONE]];

function entries(rows: readonly Row[], kind: DemoPart['kind']): DemoPart[] {
  return rows.map(([number, description, pieces, supplier, floorLife]) => ({
    number,
    description,
    pieces,
    supplier,
    kind,
    ...(floorLife === undefined ? {} : { floorLife }),
    ...(floorLife === DRY_STORE_LEVEL ? { attrition: LOST_AT_PICK_UP } : {}),
  }));
}

/** Every part number of the demo's plant. */
export const PARTS: readonly DemoPart[] = [
  ...entries(REELS, 'reel'),
  ...entries(LOTS, 'lot'),
  ...entries(PASTES, 'paste'),
];

const byNumber = new Map(PARTS.map((part) => [part.number, part]));

/** A part by its number; the demo names no other ones. */
export function demoPart(number: string): DemoPart {
  const part = byNumber.get(number);
  if (part === undefined) throw new Error(`The demo's plant has no part ${number}.`);
  return part;
}
