import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

let scene: Scene;
let qa: Page;

beforeAll(async () => {
  scene = await openScene(sceneHistory());
  await scene.addPerson('qa-1', 'qa');
  await scene.addPerson('op-1', 'operator');
  qa = await scene.pageOf('qa-1');
});
afterAll(() => scene?.close());

test('QA holds a unit, and releases it with a disposition', async () => {
  await qa.goto(`${scene.origin}/unit/${serial(20)}`);
  await qa.getByRole('button', { name: 'Place hold' }).click();
  const dialog = qa.getByRole('dialog');
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await dialog.getByLabel('Reason').fill('Cracked parts suspected');
  await dialog.getByRole('button', { name: 'Place hold' }).click();
  await qa.getByText('On hold Cracked parts suspected').waitFor();
  await qa.getByRole('button', { name: 'Release the hold: Cracked parts suspected' }).click();
  await dialog.getByLabel('Disposition').fill('use as is');
  await dialog.getByLabel('Reason').fill('Inspected under the microscope');
  await dialog.getByRole('button', { name: 'Release hold' }).click();
  await qa.getByRole('row', { name: /Released Cracked parts suspected .* use as is/ }).waitFor();
  await qa.getByRole('listitem').filter({ hasText: 'Hold released by' }).waitFor();
  expect(await faultsSeenByAxe(qa)).toEqual([]);
});

test('a voided result keeps its place, struck through, with who and why, and what it drew is gone', async () => {
  await qa.goto(`${scene.origin}/unit/${serial(21)}`);
  await qa.getByRole('link', { name: 'R-1', exact: true }).waitFor();
  const result = qa.getByRole('listitem').filter({ hasText: 'Unit processed at L1-PLACE' });
  await result.getByRole('button', { name: /^Void: Unit processed/ }).click();
  await qa.getByRole('dialog').getByLabel('Reason').fill('The wrong board was scanned');
  await qa.getByRole('dialog').getByRole('button', { name: 'Void this event' }).click();
  await result.getByText(/Voided by qa-1 at .*: The wrong board was scanned/).waitFor();
  await qa.getByRole('link', { name: 'R-1', exact: true }).waitFor({ state: 'hidden' });
  expect(await faultsSeenByAxe(qa)).toEqual([]);
});

test('scrap is for good, and refused a second time in words', async () => {
  await qa.goto(`${scene.origin}/unit/${serial(22)}`);
  const late = await scene.pageOf('qa-1');
  await late.goto(`${scene.origin}/unit/${serial(22)}`);
  for (const page of [qa, late]) {
    await page.getByRole('button', { name: 'Scrap', exact: true }).click();
    await page.getByRole('dialog').getByLabel('Reason').fill('Broken in two');
    await page.getByRole('dialog').getByRole('button', { name: 'Scrap this unit' }).click();
  }
  await qa.getByText('It is scrap, for good.').waitFor();
  await late
    .getByRole('dialog')
    .getByText(`Unit ${serial(22)} is scrap. Take it out of the line.`)
    .waitFor();
  expect(await faultsSeenByAxe(late)).toEqual([]);
  await late.close();
});

test('the record can be seen as of a moment, when nothing is to be decided', async () => {
  await qa.goto(`${scene.origin}/unit/${serial(1)}`);
  await qa.getByText('Shipped', { exact: true }).waitFor();
  const printed = qa.getByRole('listitem').filter({ hasText: 'Unit processed at L1-PRINT' });
  const text = (await printed.locator('time').textContent()) ?? '';
  await qa.getByLabel('As of').fill(text.replace(' ', 'T'));
  await qa.getByRole('button', { name: 'Show' }).press('Enter');
  await qa.getByText(`You see the record as of ${text}.`).waitFor();
  await qa.getByText('At a station', { exact: true }).waitFor();
  expect(await qa.getByRole('button', { name: 'Place hold' }).count()).toBe(0);
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await qa.getByRole('link', { name: 'Show it as of now' }).click();
  await qa.getByText('Shipped', { exact: true }).waitFor();
});

test('QA holds every unit of an answer at once, and each is held once', async () => {
  await qa.goto(`${scene.origin}/trace?item=R-2&certainty=certain`);
  const button = qa.getByRole('button', { name: /^Hold these \d+ units$/ });
  const count = Number(/\d+/.exec((await button.textContent()) ?? '')?.[0]);
  expect(count).toBeGreaterThan(1);
  await button.click();
  const dialog = qa.getByRole('dialog');
  expect(await dialog.getByLabel('Which units').inputValue()).toBe('both');
  await dialog.getByLabel('Reason').fill('Second reel suspected');
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await dialog.getByRole('button', { name: 'Hold them' }).click();
  await dialog.getByText(`${count} units are on hold now.`).waitFor();
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await dialog.getByRole('button', { name: 'Close' }).last().click();
  await qa.goto(`${scene.origin}/unit/${serial(120)}`);
  await qa.getByText('On hold Second reel suspected').waitFor();
  const operator = await scene.pageOf('op-1');
  await operator.goto(`${scene.origin}/trace?item=R-2`);
  await operator.getByRole('heading', { name: 'Where-used of item R-2' }).waitFor();
  expect(await operator.getByRole('button', { name: /^Hold these/ }).count()).toBe(0);
});

test('an operator sees a record and decides nothing about it', async () => {
  const page = await scene.pageOf('op-1');
  await page.goto(`${scene.origin}/unit/${serial(30)}`);
  await page.getByRole('heading', { name: 'As built' }).waitFor();
  expect(await page.getByRole('button', { name: /Place hold|Scrap|Void|Release/ }).count()).toBe(0);
  await page.goto(`${scene.origin}/plant`);
  await page.getByRole('heading', { name: 'Lines and stations' }).waitFor();
  expect(await page.getByText('Change the plant').count()).toBe(0);
  await page.close();
});

test('a plant file is checked by line, previewed and saved', async () => {
  const page = await scene.pageOf('admin');
  await page.goto(`${scene.origin}/plant`);
  await page.getByText('Change the plant').press('Enter');
  const text = page.getByLabel('Plant file (JSON)');
  const check = page.getByRole('button', { name: 'Check' });
  await text.fill('{\n  "parts": [\n    {"number": "NEW-1",}\n  ]\n}');
  await check.click();
  await page.getByRole('button', { name: /^Go to line 3: A name in quotes is expected/ }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await text.fill('{\n  "parts": [\n    {"number": "NEW-1"},\n    {"number": " P"}\n  ]\n}');
  await check.click();
  await page.getByRole('button', { name: /^Go to line 4: It begins or ends with a space/ }).click();
  expect(await text.evaluate((area) => area === document.activeElement)).toBe(true);
  await text.fill('{"parts": [{"number": "NEW-1", "description": "A new one"}, {"number": "R-10K"}]}');
  await check.click();
  await page.getByText('One entry changes.').waitFor();
  await page.getByRole('row', { name: 'Part NEW-1 New' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save the plant' }).click();
  await page.getByText('Saved.').waitFor();
  await page.getByRole('row', { name: 'NEW-1 A new one' }).waitFor();
  await page.close();
});
