import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { genealogyHistory, genealogyNodeCount } from '@/tests/support/genealogy-history';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

/** A unit that holds ten others, each worked on at nine stations with eleven lots: over a thousand nodes. */
const LARGE = { unit: 'BIG-1', innerCount: 10, stationCount: 9, lotCount: 11 };

let scene: Scene;
let page: Page;

beforeAll(async () => {
  scene = await openScene([...sceneHistory(), ...genealogyHistory(LARGE, Date.now())]);
  page = await scene.pageOf('admin');
});
afterAll(() => scene?.close());

const tree = () => page.getByRole('tree');
const nodes = () => page.getByRole('treeitem');
const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

async function open(unit: string): Promise<void> {
  await page.goto(`${scene.origin}/unit/${unit}/genealogy`);
  await page.getByRole('treeitem', { name: new RegExp(`^Unit ${unit}(?![\\w-])`) }).waitFor();
}

test('the page of a unit leads to its genealogy, upstream and downstream of it', async () => {
  await page.goto(`${scene.origin}/unit/${serial(1)}`);
  await page.getByRole('link', { name: 'Its genealogy as a picture' }).click();
  await page.getByRole('heading', { name: `Genealogy of unit ${serial(1)}` }).waitFor();
  await page
    .getByRole('treeitem', { name: 'Reel R-1, Contains, Certain, slot 1-01, R1, R2, part R-10K' })
    .waitFor();
  await page.getByRole('treeitem', { name: 'Stencil ST-1, Touched, Certain' }).waitFor();
  await page.getByRole('treeitem', { name: 'Person op-1, Ada Fell' }).waitFor();
  await page.getByRole('treeitem', { name: 'Container PAL-1' }).waitFor();
  await page.getByRole('treeitem', { name: 'Shipment SH-1, to Northgate Rail' }).waitFor();
  await page.getByText('Complete as of').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('a reel that only may have been used says so in words', async () => {
  await open(serial(110));
  const names = await nodes().evaluateAll((all) => all.map((each) => each.getAttribute('aria-label')));
  expect(names.filter((name) => name?.includes('Possible'))).toEqual([
    'Reel R-1, Contains, Possible, slot 1-01, R1, R2, part R-10K, lot L-7',
    'Reel R-2, Contains, Possible, slot 1-01, R1, R2, part R-10K, lot L-8',
  ]);
});

test('keys go along the lines, fold, and open a page', async () => {
  await open(serial(1));
  await nodes().first().focus();
  await page.keyboard.press('ArrowRight');
  expect(await focused()).toBe('Container CT-1, Contains');
  await page.keyboard.press('ArrowRight');
  expect(await focused()).toBe('Container PAL-1, Contains');
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowLeft');
  const station = page.getByRole('treeitem', { name: /^Station L1-PLACE/ });
  for (let moves = 0; !(await focused()).startsWith('Station L1-PLACE') && moves < 5; moves += 1)
    await page.keyboard.press((await focused()).startsWith('Station TEST') ? 'ArrowUp' : 'ArrowDown');
  expect(await station.getAttribute('aria-expanded')).toBe('true');
  await page.keyboard.press(' ');
  expect(await station.getAttribute('aria-expanded')).toBe('false');
  expect(await focused()).toMatch(/^Station L1-PLACE.*Folded: 1 person, 1 reel$/);
  await page.getByRole('status').filter({ hasText: 'L1-PLACE: folded.' }).waitFor();
  await page.keyboard.press('ArrowLeft');
  expect(await station.getAttribute('aria-expanded')).toBe('true');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/(item|trace)/);
});

test('over a thousand nodes open folded, and only those near the frame are drawn', async () => {
  await open(LARGE.unit);
  const count = genealogyNodeCount(LARGE);
  await page.getByText(`${1 + LARGE.innerCount} of ${count.toLocaleString('en')} nodes are drawn`).waitFor();
  expect(await nodes().count()).toBe(1 + LARGE.innerCount);
  await page.getByRole('button', { name: 'Unfold all', exact: true }).click();
  await page.getByText(`All ${count.toLocaleString('en')} nodes are drawn.`).waitFor();
  expect(await nodes().count()).toBeGreaterThan(5);
  expect(await nodes().count()).toBeLessThan(200);
  await nodes().first().focus();
  for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowLeft']) await page.keyboard.press(key);
  expect(await focused()).toMatch(/^Item LOT-/);
  await page.getByRole('button', { name: 'Fold all', exact: true }).click();
  await page.getByText(`${1 + LARGE.innerCount} of `).waitFor();
});

test('on paper every node that is not folded is there, with how complete the answer is', async () => {
  await open(LARGE.unit);
  await page.emulateMedia({ media: 'print' });
  await page.getByText('Complete as of').waitFor();
  for (const inner of ['BIG-1-IN-1', 'BIG-1-IN-5', 'BIG-1-IN-10'])
    await page.getByText(inner, { exact: true }).first().waitFor();
  expect(await tree().isVisible()).toBe(false);
  await page.emulateMedia({ media: null });
  await tree().waitFor();
});

test('it can be read on a phone and in the dark', async () => {
  const phone = await scene.pageOf('admin', { viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
  await phone.goto(`${scene.origin}/unit/${serial(1)}/genealogy`);
  await phone.getByRole('treeitem', { name: `Unit ${serial(1)}` }).waitFor();
  expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(await faultsSeenByAxe(phone)).toEqual([]);
  await phone.close();
});

test('of a unit that nobody knows, and of the time before it, it says so', async () => {
  await page.goto(`${scene.origin}/unit/NOBODY/genealogy`);
  await page.getByRole('heading', { name: 'No unit NOBODY' }).waitFor();
  await page.goto(`${scene.origin}/unit/${serial(1)}/genealogy?at=2001-01-01T00:00:00Z`);
  await page.getByText('No event names a unit with this serial by then.').waitFor();
});
