import type { Floor } from '@/scripts/demo/floor';
import { isWaiting } from '@/scripts/demo/incidents/everyday-holds';
import { onWorkday } from '@/scripts/demo/simulation/calendar';

/** Wrong scans that the gate refused, a count that was voided, a label that smeared, and a tablet with a wrong clock. */
export function scheduleSlips(floor: Floor): void {
  const { agenda, calendar } = floor.world;
  const wrongScans = [
    { day: 1, line: 'L1', slot: '1-11', part: 'R-1K-0402' },
    { day: 4, line: 'L2', slot: '1-02', part: 'C-4U7-0603' },
    { day: 9, line: 'L1', slot: '1-05', part: 'R-4K7-0402' },
    { day: 13, line: 'L2', slot: '1-15', part: 'D-SCHOT-SOD323' },
  ] as const;
  for (const { day, line, slot, part } of wrongScans)
    agenda.at(onWorkday(calendar, day, 10, 12), () =>
      scanWrongReel(floor, { station: `${line}-PLACE-1`, slot, part }),
    );
  for (const day of [3, 10]) agenda.at(onWorkday(calendar, day, 9, 33), () => testTooEarly(floor));
  for (const day of [5, 12]) agenda.at(onWorkday(calendar, day, 14, 2), () => packTooEarly(floor));
  for (const day of [2, 8]) agenda.at(onWorkday(calendar, day, 15, 44), () => countTwice(floor));
  for (const day of [4, 11]) agenda.at(onWorkday(calendar, day, 11, 20), () => smearLabel(floor));
  const { doubtfulClocks } = floor.world;
  agenda.at(onWorkday(calendar, 9, 6), () => doubtfulClocks.add('L2-PLACE-1').add('L2-PLACE-2'));
  agenda.at(onWorkday(calendar, 10, 6), () => doubtfulClocks.clear());
}

function scanWrongReel({ world }: Floor, scan: { station: string; slot: string; part: string }): void {
  const { journal, roster, store } = world;
  const { station, slot, part } = scan;
  const reel = store.peek(part) ?? store.receive(part, store.lotFor(part));
  const operator = roster.onDuty('handler', station);
  journal.attempt({ type: 'item.mounted', station, operator, body: { item: reel.item, slot } }, 'wrong_part');
}

function testTooEarly({ world }: Floor): void {
  const { journal, random, roster, units } = world;
  const unit = random.pick(units.filter((each) => isWaiting(each) && each.psu === null));
  const operator = roster.operatorAt('FT-1');
  const body = { unit: unit.serial, result: 'pass' as const };
  journal.attempt({ type: 'unit.processed', station: 'FT-1', operator, body }, 'wrong_step');
}

function packTooEarly({ world }: Floor): void {
  const { journal, random, roster, units } = world;
  const unit = random.pick(units.filter((each) => isWaiting(each) && each.psu === null));
  const operator = roster.onDuty('packer', 'PACK-2');
  const body = { unit: unit.serial, container: 'CT-00999' };
  journal.attempt({ type: 'unit.packed', station: 'PACK-2', operator, body }, 'unfinished');
}

/** The label of the newest unit smears: it is printed, refused a second time, and printed again for a reason. */
function smearLabel({ world }: Floor): void {
  const { agenda, journal, roster, units } = world;
  const unit = units.at(-1);
  if (unit === undefined) return;
  const target = { kind: 'unit' as const, id: unit.serial };
  const operator = roster.onDuty('qa');
  journal.write({ type: 'label.printed', operator, body: { target, copies: 1 } });
  agenda.after(120_000, () =>
    journal.attempt(
      { type: 'label.printed', operator, body: { target, copies: 1 } },
      'reprint_without_reason',
    ),
  );
  agenda.after(150_000, () =>
    journal.write({
      type: 'label.printed',
      operator,
      body: { target, copies: 1, reason: 'Smeared in the cleaner; the old label was destroyed.' },
    }),
  );
}

function countTwice({ world }: Floor): void {
  const { agenda, journal, roster, store } = world;
  const reel = store.peek('C-1U-0402') ?? store.receive('C-1U-0402', store.lotFor('C-1U-0402'));
  const operator = roster.onDuty('handler');
  const event = journal.write({
    type: 'item.counted',
    station: 'GOODS-IN',
    operator,
    body: { item: reel.item, quantity: reel.pieces * 10, method: 'by hand' },
  });
  agenda.after(240_000, () => {
    const reason = 'A digit too many.';
    journal.write({ type: 'event.voided', operator: roster.onDuty('qa'), body: { event, reason } });
    store.count(reel);
  });
}
