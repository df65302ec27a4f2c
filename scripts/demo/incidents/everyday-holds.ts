import type { Carton } from '@/scripts/demo/benches/packing';
import type { Floor } from '@/scripts/demo/floor';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';

/** Working days on which QA takes a unit out of the flow for a look, and lets it go again. */
const AUDIT_DAYS = [1, 2, 4, 5, 7, 10, 12, 13];

/** Holds of every kind that an ordinary plant has: on units, a lot, a reel and a carton. */
export function scheduleEverydayHolds(floor: Floor): void {
  const { agenda, calendar } = floor.world;
  for (const day of AUDIT_DAYS)
    agenda.at(onWorkday(calendar, day, 11, 30), () => audit(floor, { hoursHeld: 2 }));
  for (const minute of [5, 20, 35, 50])
    agenda.at(onWorkday(calendar, -1, 16, minute), () => audit(floor, { hoursHeld: null }));
  agenda.at(onWorkday(calendar, 2, 9, 10), () => holdLot(floor));
  agenda.at(onWorkday(calendar, 6, 10, 45), () => holdDamagedReel(floor));
  agenda.at(onWorkday(calendar, 6, 13), () => holdNextCarton(floor));
  agenda.at(onWorkday(calendar, 3, 8, 15), () => rejectBoards(floor));
  for (const day of [4, 7, 10])
    agenda.at(onWorkday(calendar, day, 14, 40), () => floor.packing.shipping.reload());
}

function audit({ world, office }: Floor, { hoursHeld }: { hoursHeld: number | null }): void {
  const unit = world.random.pick(world.units.filter(isWaiting));
  office.hold(unit, 'Audit: torque of the lid screws to be checked.');
  if (hoursHeld !== null) office.later(hoursHeld, () => office.letGo(unit, 'use-as-is', 'Torque is right.'));
}

/** Whether a gateway is between line and carton with nobody working on it. */
export function isWaiting(unit: DemoUnit): boolean {
  const isFree = !unit.isInService && !unit.isScrapped && unit.heldBy === null && unit.tries.size === 0;
  return isFree && unit.product === 'WX4' && unit.isOffLine && unit.carton === null && !unit.isReturned;
}

function holdLot({ world, office }: Floor): void {
  const { store } = world;
  const part = 'U-HUMID';
  const lot = store.lotFor(part);
  const reels = [store.receive(part, lot), store.receive(part, lot)];
  const hold = office.place({ kind: 'lot', id: lot }, 'Certificate of the lot is missing.');
  office.later(3.5, () => {
    office.release(hold, 'use-as-is', 'The certificate has come.');
    for (const reel of reels) store.shelve(reel, { isPartUsed: false });
  });
}

function holdDamagedReel({ world, office }: Floor): void {
  const { store } = world;
  const part = 'U-MCU-100';
  const reel = store.receive(part, store.lotFor(part));
  office.place({ kind: 'item', id: reel.item }, 'Dry bag torn on arrival.');
}

function holdNextCarton({ packing, office }: Floor): void {
  const { shipping } = packing;
  shipping.keeps = (carton: Carton) => {
    shipping.keeps = () => false;
    const hold = office.place({ kind: 'container', id: carton.code }, 'Label shows the wrong market.');
    office.later(16, () => {
      office.release(hold, 'rework', 'Label replaced.');
      shipping.load(carton);
    });
    return true;
  };
}

function rejectBoards({ world }: Floor): void {
  const { journal, roster, store } = world;
  const part = 'PCB-WX4-C';
  const boards = store.receive(part, store.lotFor(part));
  const readings = [{ name: 'bow', value: 0.27, unit: 'mm', high: 0.2 }];
  const operator = roster.onDuty('handler');
  journal.write({
    type: 'item.inspected',
    station: 'GOODS-IN',
    operator,
    body: { item: boards.item, result: 'fail', readings },
  });
  store.retire(boards, 'Rejected: bowed.');
}
