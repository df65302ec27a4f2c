import type { Floor } from '@/scripts/demo/floor';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import { LATE_SCAN } from '@/scripts/demo/stories';

const DAY = 12;

/** Story (d): the change is made in a hurry, scanned later, and the reel that came out is counted after the scan. */
export function scheduleLateScan({ lines, world }: Floor): void {
  const { agenda, calendar, store } = world;
  const { line, slot, part, lot, reel: item, pieces } = LATE_SCAN;
  const feeder = lines[line].placer2.feeder(slot);
  agenda.at(onWorkday(calendar, DAY, 15, 8), () => {
    const changed = feeder.changeUnscanned(store.receive(part, lot, { item, pieces }));
    agenda.at(onWorkday(calendar, DAY, 16, 41), () => {
      changed.scan();
      if (changed.old === null) return;
      store.count(changed.old);
      store.shelve(changed.old, { isPartUsed: false });
    });
  });
}
