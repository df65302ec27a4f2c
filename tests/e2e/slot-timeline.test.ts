import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { sceneHistory } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

const NOW = Date.now();
const HOUR_MS = 3_600_000;

let scene: Scene;
let page: Page;

beforeAll(async () => {
  scene = await openScene(sceneHistory(NOW));
  page = await scene.pageOf('admin');
});
afterAll(() => scene?.close());

async function open(on = page): Promise<void> {
  const time = { from: new Date(NOW - 8 * HOUR_MS).toISOString(), to: new Date(NOW).toISOString() };
  await on.goto(`${scene.origin}/slot-timeline?${new URLSearchParams({ station: 'L1-PLACE', ...time })}`);
  await on.getByRole('heading', { name: 'Slots of L1-PLACE over time' }).waitFor();
}

const bar = (item: string) => page.getByRole('link', { name: new RegExp(`^Reel ${item}, slot 1-01`) });
const answer = (name: string) => page.getByRole('listitem').filter({ hasText: name });

test('the floor leads to the slots of a station, with its bars, its doubt and its units in words', async () => {
  await page.goto(`${scene.origin}/floor`);
  await page.getByRole('link', { name: 'L1-PLACE', exact: true }).click();
  await page.getByRole('heading', { name: 'Slots of L1-PLACE over time' }).waitFor();
  await open();
  expect(await bar('R-1').getAttribute('aria-label')).toMatch(/part R-10K, possible from .* to /);
  expect(await bar('R-2').getAttribute('aria-label')).toMatch(
    /still there, part R-10K, possible from .* on$/,
  );
  await page.getByRole('img', { name: '120 units were processed here in this time.' }).waitFor();
  await page.getByText('Complete as of').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('a press on a bar is where-used of what stood there', async () => {
  await open();
  await bar('R-1').click();
  await page.getByRole('heading', { name: 'Where-used of item R-1' }).waitFor();
});

test('a drag over a time in a slot asks about it, and says how many units before it is opened', async () => {
  await open();
  const box = await page.locator('[data-slot="1-01"]').boundingBox();
  if (box === null) throw new Error('There is no track.');
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + 0.8 * box.width, y);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.9 * box.width, y, { steps: 5 });
  await page.mouse.move(box.x + box.width - 2, y, { steps: 5 });
  await page.mouse.up();
  expect(page.url()).toContain('/slot-timeline');
  await page.getByText(/^Slot 1-01, from .* until /).waitFor();
  const first = answer('Where-used of R-1');
  await first.filter({ hasText: /\d+ units: \d+ certain, [1-9] possible/ }).waitFor();
  await answer('Where-used of R-2')
    .filter({ hasText: /units: / })
    .waitFor();
  const count = /(\d+) units/.exec((await first.textContent()) ?? '')?.[1];
  await first.getByRole('link').click();
  await page.waitForURL(/item=R-1&station=L1-PLACE&from=.*&to=/);
  const groups = await page
    .getByRole('navigation', { name: 'Certain or possible' })
    .getByRole('link')
    .allTextContents();
  const sum = groups.reduce((total, text) => total + Number(/(\d+) unit/.exec(text)?.[1] ?? 0), 0);
  expect(sum).toBe(Number(count));
});

test('the keyboard goes from bar to bar, asks about a time, and opens where-used', async () => {
  await open();
  await bar('R-1').focus();
  await page.keyboard.press('ArrowRight');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Reel R-2/);
  await page.keyboard.press('Shift+Enter');
  await page.getByText(/^Slot 1-01, from .* until /).waitFor();
  await answer('Where-used of R-2')
    .filter({ hasText: /units: / })
    .waitFor();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Where-used of item R-1' }).waitFor();
});

test('any other time is asked about by typing it, and the time shown can be moved and widened', async () => {
  await open();
  await page.getByRole('button', { name: 'Count units' }).press('Enter');
  await answer('All that was processed here')
    .filter({ hasText: '120 units: 120 certain, 0 possible' })
    .waitFor();
  await page.getByRole('link', { name: 'Week' }).press('Enter');
  await page.locator('a[aria-current="true"]', { hasText: 'Week' }).waitFor();
  await page.getByRole('link', { name: 'Earlier' }).click();
  await page
    .getByText('No unit', { exact: true })
    .or(page.getByText(/^\d+ units?$/))
    .first()
    .waitFor();
});

test('the page of an item and the trace of a station lead there too', async () => {
  await page.goto(`${scene.origin}/item/R-1`);
  await page.getByRole('link', { name: '1-01', exact: true }).click();
  await page.getByRole('heading', { name: 'Slots of L1-PLACE over time' }).waitFor();
  await bar('R-1').waitFor();
  await page.goto(`${scene.origin}/trace?station=L1-PRINT`);
  await page.getByRole('link', { name: 'What stood in them over time' }).click();
  await page.getByRole('heading', { name: 'Slots of L1-PRINT over time' }).waitFor();
});

test('it can be read on a phone and in the dark, and says what nobody knows', async () => {
  const phone = await scene.pageOf('admin', { viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
  await open(phone);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(await faultsSeenByAxe(phone)).toEqual([]);
  await phone.goto(`${scene.origin}/slot-timeline?station=NOWHERE`);
  await phone.getByRole('heading', { name: 'No station NOWHERE' }).waitFor();
  await phone.goto(`${scene.origin}/slot-timeline`);
  await phone.getByRole('link', { name: /^L1-PLACE / }).waitFor();
  await phone.close();
});
