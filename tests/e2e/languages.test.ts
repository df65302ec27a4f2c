import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { openShift, type Shift, scan } from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

test.each([
  {
    language: 'Español',
    tag: 'es',
    which: '¿Qué estación es esta?',
    ready: 'Listo para la siguiente unidad.',
    unknown: 'Unidad desconocida',
  },
  {
    language: '繁體中文',
    tag: 'zh-Hant',
    which: '這是哪個站點？',
    ready: '可掃描下一台產品。',
    unknown: '產品不明',
  },
])('a device that is set to $language shows a station in it, and keeps it', async (words) => {
  const page = await shift.tablet('op-1', '/this-device');
  await page.getByRole('button', { name: words.language }).click();
  await page.locator(`html[lang="${words.tag}"]`).waitFor({ state: 'attached' });
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.goto(`${shift.origin}/station`);
  await page.getByText(words.which).waitFor();
  await page.getByRole('button', { name: /^L1-TEST/ }).click();
  await page.getByText(words.ready).waitFor();
  await scan(page, 'WX4C0000999');
  await page.getByText(words.unknown, { exact: true }).first().waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});
