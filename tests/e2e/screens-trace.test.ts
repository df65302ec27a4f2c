import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';
import { typeAsScanner } from '@/tests/support/type-as-scanner';

let scene: Scene;
let page: Page;

beforeAll(async () => {
  scene = await openScene(sceneHistory());
  page = await scene.pageOf('admin');
});
afterAll(() => scene?.close());

async function trace(code: string): Promise<void> {
  await page.goto(`${scene.origin}/trace`);
  await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'code');
  await typeAsScanner(page, code);
}

const rows = () => page.getByRole('table').last().locator('tbody tr');

test('a scanned reel is answered with certain and possible units apart, and where they are', async () => {
  await trace('R-1');
  await page.getByRole('heading', { name: 'Where-used of item R-1' }).waitFor();
  await page.getByRole('link', { name: /^Certain 10[0-9] units The record proves it/ }).waitFor();
  await page.getByRole('link', { name: /^Possible [1-9] units The record cannot exclude it/ }).waitFor();
  await page.getByRole('link', { name: 'Only Shipped: 10', exact: true }).waitFor();
  await page.getByText('Complete as of').waitFor();
  await page.getByRole('row', { name: 'Northgate Rail SH-1 10 0' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('more units are loaded when they are asked for', async () => {
  expect(await rows().count()).toBe(100);
  await page.getByRole('button', { name: 'Load more' }).click();
  await page.getByRole('button', { name: 'Load more' }).waitFor({ state: 'hidden' });
  expect(await rows().count()).toBeGreaterThan(100);
});

test('a press on a place shows only its units, and the address can be shared', async () => {
  await page.getByRole('link', { name: 'Only Shipped: 10', exact: true }).click();
  await page.waitForURL(/place=shipped/);
  await page.getByRole('link', { name: 'Not only Shipped: 10', exact: true }).waitFor();
  expect(await rows().count()).toBe(10);
  const other = await scene.pageOf('admin');
  await other.goto(page.url());
  await other.getByRole('link', { name: 'Not only Shipped: 10', exact: true }).waitFor();
  await other.close();
});

test('the possible group says its doubt and has its own units', async () => {
  await page.getByRole('link', { name: /^Possible/ }).click();
  await page.getByRole('heading', { name: 'Units, possible' }).waitFor();
  const count = await rows().count();
  expect(count).toBeGreaterThan(0);
  expect(count).toBeLessThan(10);
  await rows().first().getByText('The clocks leave room for it.').waitFor();
});

test('the CSV has every unit of both groups', async () => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'CSV of everything' }).click(),
  ]);
  const lines = readFileSync(await download.path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(lines[0]).toMatch(
    /^unit,product,revision,certainty,because,relation,place.*,complete as of [^,]*Z$/,
  );
  expect(lines.filter((line) => line.includes(',certain,')).length).toBeGreaterThan(100);
  expect(lines.filter((line) => line.includes(',possible,')).length).toBeGreaterThan(0);
});

test('the box keeps the focus: after a press on nothing, and for fast typing anywhere', async () => {
  await page.getByRole('heading', { name: 'Trace', exact: true }).click();
  await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'code');
  await page.getByRole('button', { name: 'Print' }).focus();
  await typeAsScanner(page, 'SH-1');
  await page.getByRole('heading', { name: 'Shipment SH-1' }).waitFor();
});

test('a unit, a container, a part and a station each lead to what they are', async () => {
  await trace(serial(1));
  await page.getByRole('heading', { name: `Unit ${serial(1)}` }).waitFor();
  await trace('CT-1');
  await page.getByRole('heading', { name: 'Container CT-1' }).waitFor();
  await trace('R-10K');
  await page.getByRole('heading', { name: 'Where-used of part R-10K' }).waitFor();
  await trace('TEST-1');
  await page.getByRole('heading', { name: 'Units processed at TEST-1' }).waitFor();
  await page.getByRole('link', { name: /^Certain 11 units/ }).waitFor();
});

test('a code of two things asks which, and one of nothing says so', async () => {
  await trace('L-7');
  await page.getByRole('heading', { name: 'L-7 is more than one thing' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('link', { name: 'Lot: which units used items of it' }).click();
  await page.getByRole('heading', { name: 'Where-used of lot L-7' }).waitFor();
  await trace('<b>nothing</b>');
  await page.getByRole('heading', { name: 'Nothing is known under <b>nothing</b>' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('conditions narrow the same draw, with the keyboard alone', async () => {
  await page.goto(`${scene.origin}/trace?item=R-1`);
  await page.getByText('Conditions', { exact: true }).press('Enter');
  await page.getByLabel('Station', { exact: true }).selectOption('TEST-1');
  await page.getByLabel('Station', { exact: true }).press('Tab');
  await page.getByRole('button', { name: 'Ask' }).press('Enter');
  await page.waitForURL(/station=TEST-1/);
  await page.getByRole('link', { name: /^Certain 0 units/ }).waitFor();
  await page.getByRole('link', { name: 'Without conditions' }).press('Enter');
  await page.getByRole('link', { name: /^Certain 10[0-9] units/ }).waitFor();
});

test('a device that owes events makes the answer incomplete', async () => {
  const body = { item: 'R-2', quantity: 40, method: 'by hand' };
  const event = { type: 'item.counted', at: new Date().toISOString(), body, device: 'tab-9', deviceSeq: 3 };
  await scene.send([{ ...event, id: '0198c0de-0000-7000-8000-000000000009' }]);
  await page.goto(`${scene.origin}/trace?item=R-1`);
  await page.getByText(/^Not complete as of .*: one device owes events/).waitFor();
  await page.getByText('Device tab-9 owes number 1–2').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  const csv = await page.request.get(`${scene.origin}/api/trace/where-used.csv?item=R-1`);
  const [heading = '', row = ''] = (await csv.text()).split('\r\n');
  expect(heading).toMatch(/,through,not complete as of [^,]*Z: tab-9 owes 1-2$/);
  expect(row).toMatch(/,no$/);
  const nothing = await page.request.get(`${scene.origin}/api/trace/where-used.csv?item=never-used`);
  expect(await nothing.text()).toMatch(/^unit,.*: tab-9 owes 1-2\r\n$/);
  await page.emulateMedia({ media: 'print' });
  await page.getByText(/^Not complete as of .*: one device owes events/).waitFor();
  await page.getByText('Where-used of item R-1').waitFor();
  await page.emulateMedia({ media: null });
});
