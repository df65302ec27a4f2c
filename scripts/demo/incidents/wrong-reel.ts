import type { Floor } from '@/scripts/demo/floor';
import type { Stock } from '@/scripts/demo/material/store';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import { WRONG_REEL } from '@/scripts/demo/stories';

const DAY = 8;
/** Boards that are still on hold when the three weeks end. */
const LEFT_HELD = 6;
const SCRAPPED = 2;
const HOURS_APART = 0.45;

/**
 * Story (c): the machine of line 1 reports the wrong reel as it is, its boards are flagged and held one by one, and
 * pile up before hand insertion until somebody there scans one.
 */
export function scheduleWrongReel(floor: Floor): void {
  const { agenda, calendar, store } = floor.world;
  const { reel, part, lot, slot } = WRONG_REEL;
  const feeder = floor.lines.L1.placer1.feeder(slot);
  let wrong: Stock | null = null;
  agenda.at(calendar.firstMs + 3 * 3_600_000, () => {
    wrong = store.receive(part, lot, { item: reel, pieces: 5000 });
  });
  agenda.at(onWorkday(calendar, DAY, 9, 52), () => {
    if (wrong === null) throw new Error('The reel of story (c) was never received.');
    const old = feeder.swapTo(wrong, { isRecordedOnly: true });
    const mounted = floor.world.journal.events.at(-1);
    if (mounted !== undefined)
      agenda.at(onWorkday(calendar, DAY, 15, 30), () =>
        floor.office.clear(mounted.id, 'Wrong reel: taken out, every board that met it is held one by one.'),
      );
    if (old !== null) store.retire(old, 'Used up.');
  });
  for (const minute of [6, 11, 17]) agenda.at(onWorkday(calendar, DAY, 13, minute), () => scanHeld(floor));
  agenda.at(onWorkday(calendar, DAY, 13, 25), () =>
    floor.watch.duringNextPlacing('L1', () => {
      const found = feeder.swapTo(feeder.takeNext());
      if (found !== null) quarantine(floor, found);
    }),
  );
  agenda.at(onWorkday(calendar, DAY, 14, 20), () => holdDoubtful(floor));
  agenda.at(onWorkday(calendar, DAY, 15), () => dispose(floor));
}

/** Hand insertion scans a board of the pile, and is refused. */
function scanHeld({ world, watch }: Floor): void {
  const { journal, random, roster } = world;
  const { serial } = random.pick(watch.wronglyPlaced.filter((unit) => unit.goOn !== null));
  journal.attempt(
    {
      type: 'unit.processed',
      station: 'INS-1',
      operator: roster.operatorAt('INS-1'),
      body: { unit: serial, result: 'pass' },
    },
    'on_hold',
  );
}

function quarantine({ world, office }: Floor, reel: Stock): void {
  const hold = office.place({ kind: 'item', id: reel.item }, 'Stood in the slot for 100 kΩ.');
  world.store.count(reel);
  office.later(20, () => office.release(hold, 'use-as-is', 'The reel itself is good.'));
}

/** Boards that were being placed when the reel was taken out may have got either part. */
function holdDoubtful({ watch, office }: Floor): void {
  for (const unit of watch.doubtful) {
    office.hold(unit, 'Placed while the wrong reel was taken out: measure R21, R22 and R37.');
    office.later(2, () => office.letGo(unit, 'use-as-is', 'R21, R22 and R37 measured: 100 kΩ.'));
  }
}

function dispose(floor: Floor): void {
  const { office, watch } = floor;
  const toRepair = watch.wronglyPlaced.slice(0, -LEFT_HELD);
  toRepair.forEach((unit, index) => {
    if (index < SCRAPPED) office.later(index + 1, () => office.scrap(unit, 'Pads lifted at R22.'));
    else office.later(index * HOURS_APART, () => repair(floor, unit));
  });
}

function repair({ bench, office }: Floor, unit: DemoUnit): void {
  const { positions, expectedPart } = WRONG_REEL;
  bench.send({
    unit,
    parts: positions.map((position) => ({ position, part: expectedPart })),
    reason: 'WRONG-PART',
    isUnderHold: true,
    done: () => office.letGo(unit, 'rework', 'R21, R22 and R37 replaced.'),
  });
}
