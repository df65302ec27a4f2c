import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import {
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

test('goods-in: reels of one delivery are booked in one after the other', async () => {
  const page = await shift.tablet('mh-1', '/items');
  await verdict(page, 'SCAN', 'Scan or type the code of the new item.');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'R-501');
  await page.getByRole('form', { name: 'Receive R-501' }).waitFor();
  // The scanner goes on through the fields, each Enter leads to the next one.
  await scan(page, 'C-100N');
  await scan(page, 'LOT-500');
  await scan(page, 'Kestrel Components');
  await scan(page, 'many');
  await page.keyboard.press('Enter');
  await page.getByText('This is not a number.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByLabel('Quantity (optional)').fill('4000');
  await page.getByRole('form').getByRole('button', { name: 'Receive' }).click();
  await verdict(
    page,
    'GO',
    'R-501 is booked in. Part C-100N, lot LOT-500, quantity 4000. Scan the next one.',
  );
  await expectFocusInScanBox(page);

  await scan(page, 'R-502');
  await page.getByRole('form', { name: 'Receive R-502' }).waitFor();
  expect(await page.getByLabel('Lot (optional)').inputValue()).toBe('LOT-500');
  await page
    .getByText('Taken over from R-501: part C-100N, lot LOT-500, supplier Kestrel Components, quantity 4000.')
    .waitFor();
  // The same gesture as for the first: each scan replaces what was taken over, and goes on to the next field.
  await scan(page, 'C-99');
  await page.getByText('No plant file names part C-99.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'LOT-501');
  await page.getByText('Taken over from R-501: supplier Kestrel Components, quantity 4000.').waitFor();
  await page.getByRole('form').getByRole('button', { name: 'Receive' }).click();
  await verdict(page, 'GO', 'R-502 is booked in. Part C-99, lot LOT-501, quantity 4000.');
  await page.getByText('No plant file names part C-99.').waitFor();
  await expectFocusInScanBox(page);

  await scan(page, 'R-10K');
  await verdict(page, 'STOP', 'R-10K is a part number, not an item.');

  await scan(page, 'R-501');
  await page.getByText('R-501 was booked in before.').waitFor();
  await page.getByRole('form').getByRole('button', { name: 'Receive' }).click();
  await verdict(page, 'STOP', 'nothing was recorded for R-501');
  await page.getByText('Item R-501 was booked in before.').waitFor();
  const stop = page.getByRole('status').filter({ hasText: 'nothing was recorded for R-501' });
  await expect.poll(async () => ((await stop.boundingBox())?.y ?? -1) >= 0).toBe(true);
});

test('goods-in: an item is counted, inspected and retired', async () => {
  const page = await shift.tablet('mh-1', '/items');
  await page.getByRole('button', { name: 'Count', exact: true }).click();
  await scan(page, 'NOBODY');
  await verdict(page, 'STOP', 'NOBODY was never received.');
  await scan(page, 'R-C');
  await page.getByRole('form', { name: 'Count R-C' }).waitFor();
  await page.getByText('1-01 of L1-PLACE').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, '54321');
  await page.keyboard.press('Enter');
  await page.getByText('More than the 5,000 it had. Is it right?').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByLabel('Quantity', { exact: true }).fill('4321');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await verdict(page, 'GO', 'R-C: 4321 counted.');
  await scanAgain(page, 'R-C');
  await page.getByRole('form', { name: 'Count R-C' }).waitFor();
  await scan(page, '4400');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Yes, save 4,400' }).click();
  await verdict(page, 'GO', 'R-C: 4400 counted.');

  await page.getByRole('button', { name: 'Inspect', exact: true }).click();
  await scan(page, 'ST-1');
  await page.getByRole('button', { name: 'Pass', exact: true }).click();
  await verdict(page, 'GO', 'ST-1 passed its inspection.');

  await page.getByRole('button', { name: 'Retire', exact: true }).click();
  await scan(page, 'LOT-J');
  await page.getByRole('form', { name: 'Retire LOT-J' }).getByLabel('Reason').fill('too old');
  await page.getByRole('form').getByRole('button', { name: 'Retire' }).click();
  await verdict(page, 'GO', 'LOT-J is retired.');
  await scanAgain(page, 'LOT-J');
  await page.getByText('Retired', { exact: true }).waitFor();
});

test('changeover: a wrong part is refused in big words, and the right slot takes it', async () => {
  const { say } = shift;
  await shift.send(
    say.received({ item: 'R-C2', kind: 'reel', part: 'C-100N', quantity: 4000 }),
    say.received({ item: 'R-R2', kind: 'reel', part: 'R-10K', quantity: 4000 }),
  );
  const page = await shift.tablet('mh-1', '/changeover');
  await page.getByRole('button', { name: /^L2-PLACE/ }).click();
  await page.getByText('0 of 2 slots ready for WX4 C').waitFor();
  await verdict(page, 'SCAN', 'Scan an item, then its slot.');
  expect(await faultsSeenByAxe(page)).toEqual([]);

  await scan(page, 'R-R2');
  await verdict(page, 'SCAN', 'R-R2 · R-10K: scan its slot.');
  await page.getByText('It belongs into 1-02.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'L2-PLACE:1-01');
  await verdict(page, 'STOP', 'R-R2 did not go into slot 1-01.');
  await page.getByText('Wrong part. It did not go in.').waitFor();
  await page.getByText('Slot 1-01 wants').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, '1-02');
  await verdict(page, 'GO', 'R-R2 is in slot 1-02.');

  await scan(page, 'R-C2');
  await scan(page, '1-01');
  await verdict(page, 'GO', 'R-C2 is in slot 1-01.');
  await page.getByText('2 of 2 slots ready for WX4 C').waitFor();
  await page.getByText('Complete: WX4 C can run here.').waitFor();
  await expectFocusInScanBox(page);

  await scan(page, 'R-R2');
  await page.getByText('It stands in slot 1-02 of L2-PLACE still.').waitFor();
  await page.getByText('In your hand: R-R2').waitFor();
  // A scan that is no item empties the hand: the slot behind it gets nothing.
  await scan(page, 'NOBODY');
  await verdict(page, 'STOP', 'No-go for NOBODY.');
  await page.getByText('Your hand is empty.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'op-1');
  await page.getByText('That is the badge op-1.').waitFor();
  await scan(page, 'L2-PLACE');
  await page.getByText('That is the label of station L2-PLACE.').waitFor();
  await scan(page, 'L1-PRINT:stencil');
  await page.getByText('L1-PRINT:stencil is a slot of L1-PRINT, not of L2-PLACE.').waitFor();
});

test('changeover: a reel that stands in another machine leaves it first', async () => {
  const { say } = shift;
  await shift.send(
    say.received({ item: 'R-C3', kind: 'reel', part: 'C-100N', quantity: 4000 }),
    say.mounted('R-C3', 'L2-PLACE', '1-01', { at: new Date().toISOString() }),
  );
  const page = await shift.tablet('mh-1', '/changeover?station=L1-PLACE');
  await scan(page, 'R-C3');
  await page.getByText('It stands in slot 1-01 of L2-PLACE still. Putting it in here').waitFor();
  await scan(page, '1-01');
  await verdict(page, 'GO', 'It left slot 1-01 of L2-PLACE.');
  await page.goto(`${shift.origin}/item/R-C3`);
  await page.getByText('L1-PLACE').first().waitFor();
  expect(await page.getByText('Still there', { exact: true }).count()).toBe(1);
});

test('changeover: a reel is spliced to the one that runs out', async () => {
  const { say } = shift;
  await shift.send(say.received({ item: 'R-C4', kind: 'reel', part: 'C-100N', quantity: 4000 }));
  const page = await shift.tablet('mh-1', '/changeover?station=L1-PLACE');
  await scan(page, 'R-C4');
  await page.getByRole('button', { name: 'Splice to the reel in the slot' }).click();
  await page.getByLabel('Units that may still take from the old end').fill('2');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, '1-01');
  await verdict(page, 'GO', 'R-C4 is spliced on in slot 1-01.');
  await page.getByText('may still feed').waitFor();
  await page.goto(`${shift.origin}/item/R-C4`);
  await page.getByText('Still there', { exact: true }).waitFor();
});

test('changeover: what comes out is counted on its return', async () => {
  const page = await shift.tablet('mh-1', '/changeover?station=L1-PLACE');
  await page.getByText('2 of 2 slots ready for WX4 C').waitFor();
  await scan(page, '1-02');
  await page.getByRole('button', { name: 'Take out R-R' }).click();
  await verdict(page, 'GO', 'R-R is out of slot 1-02.');
  await page.getByText('1 of 2 slots ready for WX4 C').waitFor();
  await page.getByLabel('Count', { exact: true }).fill('3,5 thousand');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await page.getByText('A count is a number, 0 or more.').waitFor();
  await page.getByLabel('Count', { exact: true }).fill('3500');
  await page.getByRole('button', { name: 'X-ray' }).click();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save the count' }).click();
  await verdict(page, 'GO', 'R-R: 3500 counted.');
  await expectFocusInScanBox(page);
});

test('changeover: an operator changes slots and counts nothing', async () => {
  const page = await shift.tablet('op-1', '/changeover?station=L1-PRINT');
  await scan(page, 'stencil');
  await page.getByRole('button', { name: 'Take out ST-1' }).click();
  await verdict(page, 'GO', 'ST-1 is out of slot stencil.');
  expect(await page.getByText('How many are left?').count()).toBe(0);
});
