import type { Floor } from '@/scripts/demo/floor';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';

const RETURNS = 'RETURNS-1';
const ENGINEER = 'en-501';

/** Two gateways with cracked capacitors come back: one is diagnosed and repaired, the other still lies on the table. */
export function scheduleFieldReturns(floor: Floor): void {
  const { agenda, calendar } = floor.world;
  agenda.at(onWorkday(calendar, 11, 10, 20), () => {
    const unit = comeBack(floor, {
      customer: 'Halden Water',
      reference: 'RMA-0027',
      symptom: 'Restarts every few minutes, gets warm near the terminal block.',
    });
    unit.crack = 'at-test';
    agenda.after(95 * 60_000, () => floor.finals.test(unit));
  });
  agenda.at(onWorkday(calendar, -1, 15, 40), () => {
    comeBack(floor, {
      customer: 'Northgate Rail',
      reference: 'RMA-0031',
      symptom: 'Battery empty after six days.',
    });
  });
}

function comeBack(
  { world }: Floor,
  claim: { customer: string; reference: string; symptom: string },
): DemoUnit {
  const shipped = world.units.filter(
    ({ crack, customer, isReturned }) => crack === 'sound' && customer !== null && !isReturned,
  );
  const unit = shipped.find(({ customer }) => customer === claim.customer) ?? shipped[0];
  if (unit === undefined || unit.customer === null)
    throw new Error('No unit with a capacitor of the cracked reel was shipped in time.');
  unit.isReturned = true;
  world.journal.write({
    type: 'unit.returned',
    station: RETURNS,
    operator: ENGINEER,
    body: { ...claim, unit: unit.serial, customer: unit.customer },
  });
  return unit;
}
