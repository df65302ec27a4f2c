import { UNITS_A_DAY } from '@/scripts/demo/line/day-plan';
import type { Stock } from '@/scripts/demo/material/store';
import { PLACE_1_FEEDERS, PLACE_2_FEEDERS } from '@/scripts/demo/plant/feeders';
import {
  ASSEMBLY_BINS,
  type LooseRow,
  PSU2_INSERTED,
  WX4_ASSEMBLED,
  WX4_INSERTED,
} from '@/scripts/demo/plant/loose-parts';
import { demoPart } from '@/scripts/demo/plant/parts';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import type { World } from '@/scripts/demo/simulation/world';

/** Working days before which goods come in, beside the very first delivery; each lasts until the next but one. */
const DELIVERY_DAYS = [3, 6, 9, 12];
const DAYS_COVERED = 5;
const RECEIPT_MS = 25_000;

/** Asks for every delivery of the three weeks. */
export function scheduleDeliveries(world: World): void {
  const { agenda, calendar } = world;
  agenda.at(calendar.firstMs, () => receiveWhatIsShort(world));
  for (const day of DELIVERY_DAYS)
    agenda.at(onWorkday(calendar, day, 7, 20), () => receiveWhatIsShort(world));
}

function receiveWhatIsShort(world: World): void {
  const { agenda, store } = world;
  let delayMs = 0;
  for (const [part, piecesADay] of dailyNeed()) {
    const { pieces } = demoPart(part);
    const lacking = piecesADay * DAYS_COVERED + pieces - store.piecesOf(part);
    const packings = Math.max(0, Math.ceil(lacking / pieces));
    const lots = Array.from({ length: Math.ceil(packings / 3) }, () => store.lotFor(part));
    for (let index = 0; index < packings; index += 1) {
      const lot = lots[Math.floor(index / 3)] ?? '';
      delayMs += RECEIPT_MS;
      agenda.after(delayMs, () => bookIn(world, store.receive(part, lot)));
    }
  }
}

/** A sample is counted, and of each lot of bare boards the bow is measured, before it goes on the shelf. */
function bookIn(world: World, stock: Stock): void {
  const { journal, random, roster, store } = world;
  if (stock.part.startsWith('PCB-')) {
    const bowMm = Math.round(100 * random.between(0.04, 0.17)) / 100;
    journal.write({
      type: 'item.inspected',
      station: 'GOODS-IN',
      operator: roster.onDuty('handler'),
      body: {
        item: stock.item,
        result: 'pass',
        readings: [{ name: 'bow', value: bowMm, unit: 'mm', high: 0.2 }],
      },
    });
  } else if (random.chance(0.08)) store.count(stock);
  store.shelve(stock, { isPartUsed: false });
}

function dailyNeed(): Map<string, number> {
  const need = new Map<string, number>();
  const add = (part: string, pieces: number) => need.set(part, (need.get(part) ?? 0) + pieces);
  const { WX4, PSU2 } = UNITS_A_DAY;
  for (const { parts, wx4, psu2 } of [...PLACE_1_FEEDERS, ...PLACE_2_FEEDERS]) {
    const [first, second] = parts;
    const pieces = wx4.length * WX4 + psu2.length * PSU2;
    add(first, second === undefined ? pieces : 0.7 * pieces);
    if (second !== undefined) add(second, 0.3 * pieces);
  }
  const addLoose = (rows: readonly LooseRow[], units: number) => {
    for (const { part, positions } of rows) add(part, positions.length * units);
  };
  addLoose([...WX4_INSERTED, ...ASSEMBLY_BINS, ...WX4_ASSEMBLED], WX4);
  addLoose(PSU2_INSERTED, PSU2);
  for (const part of ['FLUX-NR26', 'SOLDER-SAC']) add(part, WX4 + PSU2);
  add('PCB-WX4-C', WX4);
  add('PCB-PSU2-B', PSU2);
  add('PASTE-SAC-T4', 4);
  return need;
}
