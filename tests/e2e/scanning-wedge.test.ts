import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { chooseStation, openShift, type Shift, scan, verdict } from '@/tests/support/shift-scene';
import { typeAsScanner } from '@/tests/support/type-as-scanner';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

async function atTest(...units: string[]): Promise<Page> {
  await shift.send(...units.flatMap((unit) => shift.unit(unit, 2)));
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  // A person's key, and what listens for scanners has come; then nothing is typed for a moment.
  const listener = page.waitForResponse((response) => response.url().endsWith('.js')).catch(() => null);
  await page.keyboard.press('Shift');
  await Promise.race([listener, page.waitForTimeout(2000)]);
  await page.waitForTimeout(300);
  return page;
}

test('a scan reaches the station from a note, from a button and from nowhere, and the note keeps its text', async () => {
  const [first, second, third] = [serial(201), serial(202), serial(203)];
  const page = await atTest(first, second, third);
  await scan(page, first);
  await verdict(page, 'GO', first);
  await page.getByRole('button', { name: 'Fail', exact: true }).click();
  await scan(page, 'BRIDGE');
  await page.getByRole('button', { name: 'C2', exact: true }).click();
  const note = page.getByLabel('Note (optional)');
  await note.fill('seen twice');
  await note.press('End');
  await page.waitForTimeout(300);
  await scan(page, second);
  await page.getByRole('region', { name: 'Waiting their turn' }).getByText(second).waitFor();
  expect(await note.inputValue()).toBe('seen twice');
  await page.waitForTimeout(300);
  await note.press('End');
  await page.keyboard.type(' and typed', { delay: 70 });
  expect(await note.inputValue()).toBe('seen twice and typed');
  await page.getByRole('button', { name: 'Record fail' }).focus();
  await page.waitForTimeout(300);
  await scan(page, third);
  await page.getByRole('region', { name: 'Waiting their turn' }).getByText(third).waitFor();
  await page.getByText(`Fail ${first}`).first().waitFor();
});

test('a label with GS is read whole, and with its separators dropped by the serial pattern', async () => {
  const [first, second] = [serial(211), serial(212)];
  const page = await atTest(first, second);
  await scan(page, `0110614141073464${'10LOT7'}\u001d21${first}`);
  await verdict(page, 'GO', first);
  await page.getByRole('button', { name: 'Pass', exact: true }).click();
  await page.getByText(`${first}: Pass recorded`).waitFor();
  await scan(page, `0110614141073464${'10LOT7'}21${second}`);
  await verdict(page, 'GO', second);
  await page.getByText('the scanner left a separator out').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('what is typed as fast as a scan and ends as none stands in the box, and Enter takes it from there', async () => {
  const [first, second] = [serial(241), serial(242)];
  const page = await atTest(first, second);
  // Its name changes with the work.
  const box = page.getByRole('textbox', { name: /^Scan/ });
  await typeAsScanner(page, first.slice(0, -1), null);
  await expect.poll(() => box.inputValue()).toBe(first.slice(0, -1));
  await page.waitForTimeout(100);
  await page.keyboard.press(first.slice(-1));
  await page.keyboard.press('Enter');
  await verdict(page, 'GO', first);
  expect(await box.inputValue()).toBe('');
  await page.getByRole('button', { name: 'Pass', exact: true }).click();
  await page.getByText(`${first}: Pass recorded`).waitFor();
  // The box still has the beginning of a scan for a moment; a key that follows is none of it.
  await typeAsScanner(page, second);
  await page.keyboard.press('Backspace');
  await verdict(page, 'GO', second);
  expect(await box.inputValue()).toBe('');
});

test('the same scan twice within a second counts once', async () => {
  const unit = serial(221);
  const page = await atTest(unit);
  await scan(page, unit);
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  expect(await page.getByText('is in work already').count()).toBe(0);
});

test('a device keeps how its scanner types', async () => {
  const unit = serial(231);
  const page = await atTest(unit);
  await page.goto(`${shift.origin}/this-device`);
  await page.getByRole('heading', { name: 'This device' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Tab', exact: true }).click();
  await page.getByLabel('Typed in front of every code').fill('~');
  await page.getByLabel('Longest time between two characters').fill('150');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('Saved on this device.').waitFor();
  const trial = page.getByLabel('Scan something to try it');
  await trial.focus();
  await page.waitForTimeout(300);
  await typeAsScanner(page, `~${unit}`, 'Tab');
  await page.getByText(`Code: ${unit}`).waitFor();

  await page.goto(`${shift.origin}/station`);
  await page.getByText('Ready for the next unit.').waitFor();
  // A device that is set up listens at once; a tablet is never idle on the network.
  await page.waitForTimeout(1000);
  await typeAsScanner(page, `~${unit}`, 'Tab');
  await verdict(page, 'GO', unit);
});
