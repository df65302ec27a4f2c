import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { eventMaker } from '@/tests/support/event-maker';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

const PHONE = { viewport: { width: 390, height: 844 } };
const TABLET = { viewport: { width: 1024, height: 768 } };

let scene: Scene;

beforeAll(async () => {
  scene = await openScene(sceneHistory());
});
afterAll(() => scene?.close());

async function widthOverflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

test('the floor shows the line in route order, what is stuck and what is held, and renews itself', async () => {
  const page = await scene.pageOf('admin');
  await page.getByRole('heading', { name: 'Floor of Tarn Valley Electronics' }).waitFor();
  const stations = await page.getByRole('listitem').getByRole('heading', { level: 3 }).allInnerTexts();
  expect(stations.map((text) => text.split('\n')[0])).toEqual(['L1-PRINT', 'L1-PLACE', 'TEST-1']);
  await page.getByText('Making WX4 C').waitFor();
  await page.getByRole('row', { name: new RegExp(`${serial(11)} Failed at test TEST-1`) }).waitFor();
  await page.getByText('Nothing is on hold.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);

  const hold = eventMaker().held('item', 'R-2', { at: new Date().toISOString() });
  await scene.send([hold]);
  await page.getByText('Item on hold', { exact: true }).waitFor({ timeout: 12_000 });
  await page.getByRole('link', { name: 'R-2' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.close();
});

test('every count of the floor leads to the list behind it', async () => {
  const page = await scene.pageOf('admin');
  const listed = async (): Promise<number> => {
    const words = await page.getByRole('status').filter({ hasText: /unit/ }).textContent();
    return Number.parseInt((words ?? '').replaceAll(',', ''), 10) || 0;
  };
  const links = page.getByRole('link', { name: /^List: / });
  await links.first().waitFor();
  const counts = await links.evaluateAll((all) =>
    all.map((link) => ({ href: link.getAttribute('href') ?? '', text: link.textContent ?? '' })),
  );
  const ofUnits = counts.filter(({ href }) => href.startsWith('/floor/units'));
  expect(ofUnits.length).toBeGreaterThanOrEqual(3);
  for (const { href, text } of ofUnits) {
    await page.goto(scene.origin + href);
    await page.getByRole('heading', { name: 'Units on the floor' }).waitFor();
    expect(await listed(), href).toBe(Number.parseInt(text.replaceAll(',', ''), 10));
  }
  await page.goto(`${scene.origin}/floor/units?place=station&station=TEST-1&trouble=failed`);
  await page.getByRole('row', { name: new RegExp(`${serial(11)}.*Failed at test`) }).waitFor();
  await page.getByRole('link', { name: 'All stations' }).click();
  await page.waitForURL('**/floor/units?place=station&trouble=failed');
  await page.close();
});

test.each([
  ['phone in the light', { ...PHONE, colorScheme: 'light' as const }],
  ['tablet in the dark', { ...TABLET, colorScheme: 'dark' as const }],
])('every screen fits a %s, and axe finds nothing', async (_, options) => {
  const page = await scene.pageOf('admin', options);
  for (const path of PATHS) {
    await page.goto(scene.origin + path);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await faultsSeenByAxe(page), path).toEqual([]);
    expect(await widthOverflow(page), path).toBeLessThanOrEqual(0);
  }
  await page.context().close();
});

const PATHS = [
  '/floor',
  '/floor/units',
  '/floor/units?trouble=failed',
  '/floor/units?place=stock&trouble=unsigned',
  '/floor/units?place=nowhere',
  '/trace',
  '/trace?item=R-1',
  `/unit/${serial(1)}`,
  `/unit/${serial(11)}`,
  '/item/R-1',
  '/item/ST-1',
  '/lot/L-7',
  '/container/CT-1',
  '/container/PAL-1',
  '/shipment/SH-1',
  '/plant',
  '/unit/nobody',
  '/item/nothing%2Fat%20all',
  '/no-such-page',
];

test('a floor that gets no answer says since when, and asks on', async () => {
  const page = await scene.pageOf('admin');
  const warning = page.getByRole('alert').filter({ hasText: 'What you see is old.' });
  await page.waitForResponse('**/api/floor');
  await page.context().setOffline(true);
  await warning.waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.context().setOffline(false);
  await warning.waitFor({ state: 'hidden' });
  await page.context().clearCookies();
  await page.getByText('Your session ended.').waitFor();
  await page.getByRole('link', { name: 'Sign in' }).click();
  await page.waitForURL('**/sign-in?to=%2Ffloor');
});

test('each role sees its own screens in the rail', async () => {
  await scene.addPerson('pk-1', 'packer');
  const page = await scene.pageOf('pk-1', TABLET);
  const rail = page.getByRole('navigation', { name: 'Screens' });
  const names = await rail
    .getByRole('link')
    .evaluateAll((links) => links.map((link) => link.ariaLabel ?? link.textContent ?? ''));
  expect(names.map((name) => name.trim())).toEqual([
    'Skip to the content',
    'Reelkin',
    'Floor',
    'Pack & ship',
    'Holds',
    'Trace',
    'Plant',
    'This device: scanner and language',
  ]);
  // Nothing at its foot is cut off.
  const isInside = await page.getByRole('button', { name: 'Sign out' }).evaluate((button) => {
    const box = button.getBoundingClientRect();
    const over = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
    return (
      box.right <= (button.closest('aside, header, nav')?.getBoundingClientRect().right ?? 0) &&
      button.contains(over)
    );
  });
  expect(isInside).toBe(true);
  expect(await rail.getByRole('link', { name: 'Floor' }).getAttribute('aria-current')).toBe('page');
  await page.goto(`${scene.origin}/people`);
  await page.getByRole('heading', { name: 'Your role may not open this' }).waitFor();
  await rail.getByRole('button', { name: 'Sign out' }).click();
  await page.waitForURL('**/sign-in');
});

test('the colours follow the device until they are switched, and stay so', async () => {
  const page = await scene.pageOf('admin', { colorScheme: 'dark' });
  const scheme = () => page.locator('html').getAttribute('data-mantine-color-scheme');
  expect(await scheme()).toBe('dark');
  await page.getByRole('button', { name: 'Colours' }).click();
  expect(await scheme()).toBe('light');
  await page.reload();
  expect(await scheme()).toBe('light');
});

test('a phone has its menu behind a button, and the keyboard can skip it', async () => {
  const page = await scene.pageOf('admin', PHONE);
  await page.getByRole('link', { name: 'Trace', exact: true }).waitFor({ state: 'hidden' });
  await page.getByRole('button', { name: 'Open the menu' }).click();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('link', { name: 'Plant', exact: true }).click();
  await page.waitForURL('**/plant');
  await page.reload();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
});
