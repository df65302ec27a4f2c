import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { chooseStation, openShift, type Shift, scan, verdict } from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

test('readings are typed where they are usual, and one beyond its limits suggests the fail', async () => {
  const [before, unit, next, offline] = [serial(501), serial(502), serial(503), serial(504)];
  const { say } = shift;
  const readings = [{ name: 'current', value: 0.5, unit: 'A', low: 0.4, high: 0.6 }];
  await shift.send(
    ...[before, unit, next, offline].flatMap((each) => shift.unit(each, 2)),
    say.make('unit.processed', { unit: before, result: 'pass', readings }, { station: 'L1-TEST' }),
  );
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  const field = page.getByLabel('current (A)');
  await page.getByText('0.4 to 0.6').waitFor();
  await field.fill('0.55');
  await page.getByText('Within limits').waitFor();
  await field.fill('0,7');
  await page.getByText('Too high').waitFor();
  await page.getByRole('alert').filter({ hasText: 'fail the unit, or measure again' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.keyboard.press('F8');
  await page.getByText(`A reading is beyond its limits: ${unit} was not passed.`).waitFor();
  await page.getByRole('button', { name: 'Pass all the same' }).click();
  await page.getByText(`${unit}: Pass recorded`).waitFor();
  expect((await shift.asBuilt(unit)).events.at(-1)?.body).toMatchObject({
    readings: [{ name: 'current', value: 0.7, unit: 'A', low: 0.4, high: 0.6 }],
  });

  await scan(page, next);
  await verdict(page, 'GO', next);
  await page.getByRole('button', { name: 'Add a reading' }).click();
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByText('This is needed.').first().waitFor();
  await page.getByLabel('What is measured').fill('torque');
  await page.getByLabel('Value').fill('1.2');
  await page.getByLabel('At most (optional)').fill('2');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByText('at most 2').waitFor();
  await page.keyboard.press('F8');
  await page.getByText(`${next}: Pass recorded`).waitFor();

  await page.context().setOffline(true);
  await scan(page, offline);
  await page.getByLabel('torque').fill('1.5');
  await page.keyboard.press('F8');
  await page.getByText(`${offline}: Pass kept on this tablet`).waitFor();
  await page.context().setOffline(false);
  await expect
    .poll(async () => (await shift.asBuilt(offline)).events.at(-1)?.body, { timeout: 60_000 })
    .toMatchObject({ result: 'pass', readings: [{ name: 'torque', value: 1.5, high: 2 }] });
});

test('a position that the BOM does not name is asked about once, and may be recorded all the same', async () => {
  const unit = serial(511);
  await shift.send(...shift.unit(unit, 2));
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  await page.keyboard.press('F9');
  await scan(page, 'NEVER-SEEN');
  await page.getByText('NEVER-SEEN was not given anywhere in the plant lately').waitFor();
  await scan(page, 'c02');
  await page.getByText('No position c02 in the BOM').waitFor();
  await page.getByRole('button', { name: 'C2', exact: true }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await scan(page, 'PAD-7');
  await page.getByRole('button', { name: 'Record PAD-7 all the same' }).click();
  await page.getByRole('button', { name: 'Record fail' }).click();
  await page.getByText(`${unit}: Fail recorded`).waitFor();
  expect((await shift.asBuilt(unit)).events.at(-1)?.body).toMatchObject({
    defects: [{ code: 'NEVER-SEEN', position: 'PAD-7' }],
  });

  const repair = await shift.tablet('op-1', '/station');
  await chooseStation(repair, 'REWORK-1');
  await scan(repair, unit);
  await repair.getByText(`Repair ${unit}`).waitFor();
  await scan(repair, 'C9');
  await repair.getByText('No position C9 in the BOM').waitFor();
  expect(await faultsSeenByAxe(repair)).toEqual([]);
  await repair.getByRole('button', { name: 'C2', exact: true }).first().click();
  await repair.getByRole('button', { name: 'Part is off' }).click();
  await scan(repair, 'R-R');
  await verdict(repair, 'STOP', 'Wrong part for C2: R-R is R-10K; the BOM says C-100N.');
  await repair.getByRole('button', { name: 'It is on the board already' }).click();
  await repair.getByText('C2: R-R fitted, which is the wrong part; QA decides').waitFor();

  const qa = await shift.tablet('qa-1', '/exceptions');
  await qa.getByText(`R-R, fitted at C2 of ${unit}, is R-10K; the BOM says C-100N.`).waitFor();
});
