import type { Floor } from '@/scripts/demo/floor';
import type { Stock } from '@/scripts/demo/material/store';
import type { LineCode } from '@/scripts/demo/plant/stations';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import { CRACKED_REEL } from '@/scripts/demo/stories';

const PIECES = 500;

/** Story (a): where the reel whose capacitors crack was and when. */
export function scheduleCrackedReel(floor: Floor): void {
  const { agenda, calendar, store } = floor.world;
  const { reel, siblingReel, part, lot } = CRACKED_REEL;
  let suspect: Stock | null = null;
  agenda.at(calendar.firstMs + 3 * 3_600_000, () => {
    suspect = store.receive(part, lot, { item: reel, pieces: PIECES });
    store.receive(part, lot, { item: siblingReel, pieces: PIECES });
  });
  agenda.at(onWorkday(calendar, 4, 9, 40), () => mount(floor, 'L1', suspect));
  agenda.at(onWorkday(calendar, 5, 15, 10), () => {
    const { feeder } = slotOf(floor, 'L1');
    const part = feeder.swapTo(feeder.takeNext());
    if (part !== null) store.count(part);
  });
  agenda.at(onWorkday(calendar, -2, 14, 5), () => mount(floor, 'L2', suspect));
}

function mount(floor: Floor, line: LineCode, suspect: Stock | null): void {
  if (suspect === null) throw new Error('The reel of story (a) was never received.');
  const { store } = floor.world;
  const old = slotOf(floor, line).feeder.swapTo(suspect);
  if (old === null) return;
  store.count(old);
  store.shelve(old, { isPartUsed: true });
}

function slotOf(floor: Floor, line: LineCode) {
  return { feeder: floor.lines[line].placer1.feeder(CRACKED_REEL.slot) };
}
