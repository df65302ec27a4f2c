import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import {
  chooseStation,
  expectFocusInScanBox,
  openShift,
  type Shift,
  scan,
  scanAgain,
  verdict,
} from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

test('an unsigned unit is not packed; QA signs it off, and it is; what it lacks is said each time', async () => {
  const unit = serial(301);
  await shift.send(...shift.unit(unit, 4), shift.say.removed(unit, 'C2'));
  const lacks = ['Not in it yet: PSU2 at A1', 'C2 is empty: a part was removed and none was fitted.'];
  const pack = await shift.tablet('pk-1', '/pack');
  await verdict(pack, 'SCAN', 'Scan a unit, then its carton.');
  expect(await faultsSeenByAxe(pack)).toEqual([]);
  await scan(pack, unit);
  await verdict(pack, 'SCAN', `${unit}: scan the container to pack into.`);
  await scan(pack, 'CT-301');
  // The plant's first carton: no other code looks like it.
  await pack.getByRole('button', { name: 'Open CT-301 as a new carton' }).click();
  await verdict(pack, 'STOP', `${unit} was not packed into CT-301.`);
  await pack.getByText(`Unit ${unit} has no QA sign-off.`).waitFor();
  expect(await faultsSeenByAxe(pack)).toEqual([]);

  const qa = await shift.tablet('qa-1', '/station');
  await chooseStation(qa, 'QA-1');
  await scan(qa, unit);
  await verdict(qa, 'GO', `${unit} · WX4 C: every step is passed.`);
  for (const words of lacks) {
    await qa.getByRole('alert').getByText(words).waitFor();
    await qa.getByRole('definition').filter({ hasText: words }).waitFor();
  }
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await qa.getByRole('button', { name: 'Sign off as qa-1' }).click();
  await qa.getByText(`${unit}: Sign-off recorded`).waitFor();
  await expectFocusInScanBox(qa);

  await scan(pack, unit);
  await verdict(pack, 'GO', `${unit} is in CT-301.`);
  for (const words of lacks) await pack.getByRole('alert').getByText(words).waitFor();
  await expectFocusInScanBox(pack);
});

test('a carton is filled, put on a pallet and shipped; what is held keeps it back', async () => {
  const units = [serial(311), serial(312), serial(313)];
  await shift.send(...units.flatMap(shift.finished));
  const page = await shift.tablet('pk-1', '/pack');
  // Two units in quick succession, then the carton they go into, then one more.
  await scan(page, units[0] ?? '');
  await scan(page, units[1] ?? '');
  await scan(page, 'CT-310');
  await page.getByText('2 units').first().waitFor();
  await scan(page, units[2] ?? '');
  await verdict(page, 'GO', `${units[2]} is in CT-310.`);
  await page.getByText('3 units').first().waitFor();
  await page.getByRole('button', { name: `Take ${units[0]} out` }).click();
  await verdict(page, 'GO', `${units[0]} is out of CT-310.`);

  await page.getByRole('button', { name: 'Put it into a pallet' }).click();
  await verdict(page, 'SCAN', 'CT-310: scan the pallet or carton that it goes into.');
  await scan(page, 'PAL-310');
  await page.getByText('Nobody knows PAL-310 yet. Is it a new pallet?').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Put it into PAL-310, a new pallet' }).click();
  await verdict(page, 'GO', 'CT-310 is in PAL-310.');

  await shift.send(shift.say.held('unit', units[1] ?? ''));
  await scanAgain(page, 'PAL-310');
  await page.getByText('One thing stops PAL-310 from leaving').waitFor();
  await page.getByText(`Unit ${units[1]} is on hold: cracks`).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);

  const qa = await shift.tablet('qa-1', '/holds');
  await qa.getByRole('button', { name: `Release the hold on ${units[1]}` }).click();
  const dialog = qa.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Use as is' }).click();
  await dialog.getByLabel('Reason').fill('inspected again');
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await dialog.getByRole('button', { name: 'Release', exact: true }).click();
  await verdict(qa, 'GO', `The hold on ${units[1]} is released.`);

  await page.reload();
  await page.getByText('Nothing stops PAL-310 from leaving.').waitFor();
  await page.getByRole('button', { name: 'Ship PAL-310' }).click();
  await page.getByText('This is needed.').first().waitFor();
  await page.getByLabel('Shipment').fill('SH-310');
  await page.getByLabel('Customer').fill('Northgate Rail');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Ship PAL-310' }).click();
  await verdict(page, 'GO', 'PAL-310 has left with shipment SH-310.');
  await scan(page, 'PAL-310');
  await page.getByText('Left with shipment SH-310 to Northgate Rail').waitFor();

  const desk = await shift.tablet('en-1', '/returns');
  await scan(desk, units[2] ?? '');
  await desk.getByRole('form', { name: `Receive ${units[2]} as a return` }).waitFor();
  await desk.getByRole('alert').getByText('Not in it yet: PSU2 at A1').waitFor();
  expect(await desk.getByLabel('Customer').inputValue()).toBe('Northgate Rail');
  await desk.getByLabel('Symptom or error code (optional)').fill('no radio');
  expect(await faultsSeenByAxe(desk)).toEqual([]);
  await desk.getByRole('button', { name: 'Receive the return' }).click();
  await verdict(desk, 'GO', `${units[2]} is received as a return.`);
  await scan(desk, 'WX4C9999999');
  await verdict(desk, 'STOP', 'no unit WX4C9999999 was ever started');
});

test('a carton that nobody knows is opened on purpose only, and an item is none', async () => {
  const page = await shift.tablet('pk-1', '/pack');
  await scan(page, 'BOX-1');
  await page.getByText('Nobody knows BOX-1 yet. Is it a new carton?').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Open BOX-1 as a new carton' }).click();
  await verdict(page, 'SCAN', 'BOX-1 is open: scan the next unit.');
  await scan(page, 'R-C');
  await page.getByText('R-C is an item, neither a unit nor a container.').waitFor();
  await scan(page, 'WX4C7777777');
  await verdict(page, 'STOP', 'WX4C7777777 was not packed into BOX-1.');
  await page.getByText('Unknown unit', { exact: true }).waitFor();
});

test('a new carton is taken without a question when it looks like the others, and can be taken back', async () => {
  const [unit, other] = [serial(321), serial(322)];
  await shift.send(...shift.finished(unit), ...shift.finished(other), shift.say.packed(other, 'CT-320'));
  const page = await shift.tablet('pk-1', '/pack');
  await scan(page, unit);
  await scan(page, 'CT-321');
  await verdict(page, 'GO', `${unit} is in CT-321.`);
  await page.getByText('NEW: CT-321 was never used before.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Undo: it is none' }).click();
  await verdict(page, 'GO', `${unit} is out of CT-321.`);
  await page.getByText('No container is open.').waitFor();
  await scan(page, unit);
  await scan(page, 'LABEL-OF-SOMETHING');
  await page.getByText('Nobody knows LABEL-OF-SOMETHING yet. Is it a new carton?').waitFor();
  await page.getByRole('button', { name: 'No, scan again' }).click();
  await verdict(page, 'SCAN', `${unit}: scan the container to pack into.`);
});

test('QA places a hold on a lot, with faults by field, and everybody sees it', async () => {
  const page = await shift.tablet('qa-1', '/holds');
  await page.getByRole('button', { name: 'Place a hold' }).click();
  await page.getByRole('button', { name: 'Place the hold' }).click();
  expect(await page.getByText('This is needed.').count()).toBe(2);
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Lot', exact: true }).click();
  await page.getByLabel('Code').fill('LOT-R');
  await page.getByLabel('Reason').fill('wrong marking');
  await page.getByRole('button', { name: 'Place the hold' }).click();
  await verdict(page, 'GO', 'LOT-R is on hold.');
  const operator = await shift.tablet('op-1', '/holds');
  await operator.getByText('wrong marking').waitFor();
  expect(await operator.getByRole('button', { name: /Release|Place/ }).count()).toBe(0);
  expect(await faultsSeenByAxe(operator)).toEqual([]);
});
