import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { eventMaker } from '@/tests/support/event-maker';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

let scene: Scene;
let page: Page;

beforeAll(async () => {
  scene = await openScene(sceneHistory());
  const make = eventMaker();
  const at = { at: new Date().toISOString(), gate: 'record' } as const;
  await scene.send([
    ...[20, 21, 22].map((number) => make.removed(serial(number), 'R1', at)),
    make.joined(serial(23), 'BOX-1', at),
    make.joined(serial(22), 'BOX-1', at),
  ]);
  page = await scene.pageOf('admin');
});
afterAll(() => scene?.close());

const rows = () => page.getByRole('table').last().locator('tbody tr');
const conditions = () => page.getByRole('main').getByRole('list').first().getByRole('listitem');

/** The server does what the next request with this text asks, and nobody hears of it. */
async function loseAnswerOnce(text: string): Promise<void> {
  let isLost = false;
  await page.route('**/trace/narrow**', async (route) => {
    if (isLost || route.request().postData()?.includes(text) !== true) return route.continue();
    isLost = true;
    await route.fetch();
    await route.abort();
  });
}

test('a where-used answer is narrowed by what must not be, with the keyboard alone', async () => {
  await page.goto(`${scene.origin}/trace?item=R-1`);
  await page.getByRole('link', { name: 'Narrow this answer' }).press('Enter');
  await page.getByText('used item R-1').waitFor();
  const form = page.getByRole('form', { name: 'Add a condition' });
  await form.getByLabel('The unit').selectOption('mustNot');
  await form.getByLabel('Condition').selectOption('repaired');
  await form.getByLabel('Position').fill('R1');
  await form.getByLabel('Position').press('Enter');
  await page.getByText('was repaired at position R1').waitFor();
  expect(await conditions().count()).toBe(2);
  await conditions().nth(1).getByText('Rules out 3').waitFor();
  await conditions().nth(1).getByText('Keeps 1 that it may not rule out').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('a possible unit stays and says why', async () => {
  await page.getByRole('link', { name: /^Possible/ }).click();
  await page.getByRole('heading', { name: 'Units, possible' }).waitFor();
  await page.getByText('Condition 2: a unit inside it meets this, another may not.').waitFor();
  await page.getByText('Condition 1: the clocks leave room for it.').first().waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('the address holds the whole question, and Back undoes a change of it', async () => {
  const left = await rows().count();
  const other = await scene.pageOf('admin');
  await other.goto(page.url());
  await other.getByText('was repaired at position R1').waitFor();
  expect(await other.getByRole('table').last().locator('tbody tr').count()).toBe(left);
  await other.getByRole('link', { name: 'Make it a must: was repaired at position R1' }).press('Enter');
  await other.getByText('Leaves 4 certain and 0 possible').waitFor();
  await other.getByRole('link', { name: 'Remove the condition: used item R-1' }).press('Enter');
  await other.getByText('used item R-1').waitFor({ state: 'hidden' });
  await other.goBack();
  await other.getByText('used item R-1').waitFor();
  await other.close();
});

test('a condition that says nothing is told at the form', async () => {
  const form = page.getByRole('form', { name: 'Add a condition' });
  await form.getByLabel('Condition').selectOption('defect');
  await form.getByRole('button', { name: 'Add' }).click();
  await page.getByRole('alert').getByText('It does not say what to look for').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('the CSV is headed by the question and says whether it is complete', async () => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'CSV of everything' }).click(),
  ]);
  const [head = '', ...lines] = readFileSync(await download.path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(head).toMatch(/1\. must used item=R-1,2\. must not repaired position=R1,complete as of 20/);
  expect(lines.filter((line) => line.includes(',certain,')).length).toBeGreaterThan(100);
  expect(lines.some((line) => line.startsWith('BOX-1,'))).toBe(true);
});

test('the units are held one by one, and neither a lost answer nor a second press holds a unit twice', async () => {
  await page.goto(`${scene.origin}/trace?item=R-1&from=2026-01-01T00:00:00Z`);
  await page.getByRole('link', { name: 'Narrow this answer' }).click();
  const form = page.getByRole('form', { name: 'Add a condition' });
  await form.getByLabel('Condition').selectOption('packed');
  await form.getByLabel('Shipment').fill('SH-1');
  await form.getByRole('button', { name: 'Add' }).click();
  await page.getByText('is now packed with shipment SH-1').waitFor();
  expect(await rows().count()).toBe(10);
  await page.getByRole('link', { name: 'Only Shipped: 10' }).waitFor();
  const dialog = page.getByRole('dialog');
  const hold = async () => {
    await page.getByRole('button', { name: 'Hold these 10 units' }).press('Enter');
    await dialog.getByLabel('Reason').fill('cracked resistors of R-1');
    expect(await faultsSeenByAxe(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Hold them' }).press('Enter');
  };
  await loseAnswerOnce('cracked resistors of R-1');
  await hold();
  await dialog.getByText('The server did not answer; 0 of 10 are done.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Go on' }).press('Enter');
  await dialog.getByText('10 units are on hold now.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Close' }).last().press('Enter');
  await page.getByText('10 on hold').waitFor();
  await hold();
  await dialog.getByText('No more unit was to be held.').waitFor();
  await dialog.getByText('10 units were on hold for this reason already').waitFor();
  await dialog.getByRole('link', { name: 'See all holds' }).press('Enter');
  await page.getByText('cracked resistors of R-1').first().waitFor();
  expect(await page.getByText('cracked resistors of R-1').count()).toBe(10);
});

test('who may not place holds sees the answer and no button', async () => {
  await scene.addPerson('packer-1', 'packer');
  const packer = await scene.pageOf('packer-1', { viewport: { width: 390, height: 844 } });
  await packer.goto(page.url());
  await packer.goto(`${scene.origin}/trace?item=R-1`);
  await packer.getByRole('link', { name: 'Narrow this answer' }).click();
  await packer.getByText('used item R-1').waitFor();
  expect(await packer.getByRole('button', { name: /^Hold these/ }).count()).toBe(0);
  expect(await faultsSeenByAxe(packer)).toEqual([]);
  const width = await packer.evaluate(() => document.documentElement.scrollWidth);
  expect(width).toBeLessThanOrEqual(390);
  await packer.close();
});
