import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { eventMaker } from '@/tests/support/event-maker';
import { SCENE_PLANT } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

const say = eventMaker('2026-03-20T06:00:00Z', '0198c0df');
const UNIT = 'WX4C0009001';
const REASON = 'Looked at under the microscope: nothing wrong';

let scene: Scene;
let qa: Page;

beforeAll(async () => {
  expect(SCENE_PLANT.products[0]?.route[0]?.operation).toBe('print');
  scene = await openScene([
    say.started({ unit: UNIT, product: 'WX4', revision: 'C' }),
    say.passed(UNIT, 'TEST-1', { gate: 'record', operator: 'op-1', device: 'tab-3', deviceSeq: 1 }),
  ]);
  await scene.addPerson('qa-1', 'qa');
  await scene.addPerson('op-1', 'operator');
  qa = await scene.pageOf('qa-1');
});
afterAll(() => scene?.close());

test('the navigation says how many exceptions wait for QA, and each is told in words', async () => {
  await qa.getByRole('link', { name: 'Exceptions one open' }).click();
  await qa.getByRole('heading', { name: 'One event broke a rule and waits for QA' }).waitFor();
  const row = qa.getByRole('row', { name: new RegExp(`^${UNIT}`) });
  for (const text of ['Unit processed', 'Wrong step', 'TEST-1 · op-1 · device tab-3', '2026-03-20 06:0'])
    await row.getByText(text).first().waitFor();
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await qa.setViewportSize({ width: 390, height: 844 });
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  expect(await qa.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await qa.setViewportSize({ width: 1440, height: 900 });
});

test('QA clears an exception with a reason, by keyboard; its unit is free, until it is opened again', async () => {
  const clear = qa.getByRole('button', { name: `Clear ${UNIT}` });
  await clear.focus();
  await qa.keyboard.press('Enter');
  const dialog = qa.getByRole('dialog');
  await dialog.getByLabel('Reason').waitFor();
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await qa.keyboard.type(REASON);
  await qa.keyboard.press('Tab');
  await dialog.getByRole('button', { name: 'Clear it' }).press('Enter');
  await qa.getByRole('heading', { name: 'Nothing is open' }).waitFor();
  await qa.getByText(`qa-1: ${REASON}`).waitFor();
  expect(await qa.getByRole('link', { name: 'Exceptions', exact: true }).count()).toBe(1);
  await qa.goto(`${scene.origin}/holds`);
  await qa.getByText('Nothing is on hold').first().waitFor();
  await qa.goto(`${scene.origin}/exceptions`);
  await qa.getByRole('button', { name: `Open again ${UNIT}` }).click();
  await dialog.getByLabel('Reason').fill('It was the wrong board');
  await dialog.getByRole('button', { name: 'Open it again' }).click();
  await qa.getByRole('heading', { name: 'One event broke a rule and waits for QA' }).waitFor();
  expect(await faultsSeenByAxe(qa)).toEqual([]);
});

test('an operator has no way to it', async () => {
  const operator = await scene.pageOf('op-1');
  expect(await operator.getByRole('link', { name: /Exceptions/ }).count()).toBe(0);
  await operator.goto(`${scene.origin}/exceptions`);
  await operator.waitForURL('**/not-permitted**');
});
