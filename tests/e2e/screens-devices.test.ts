import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { eventMaker } from '@/tests/support/event-maker';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

const say = eventMaker('2026-03-20T06:00:00Z', '0198c0df');

let scene: Scene;
let qa: Page;

beforeAll(async () => {
  const of = (device: string, deviceSeq: number) => ({ device, deviceSeq, gate: 'record' as const });
  const owing = [1, 2, 6].map((number) =>
    say.signed(serial(30), { ...of('tab-lost', number), uncertaintyMs: 45_000 }),
  );
  scene = await openScene([...sceneHistory(), ...owing, say.signed(serial(31), of('tab-good', 1))]);
  await scene.addPerson('qa-1', 'qa');
  await scene.addPerson('op-1', 'operator');
  qa = await scene.pageOf('qa-1');
});
afterAll(() => scene?.close());

test('QA comes from the floor to the devices, and sees who owes what', async () => {
  await qa.getByRole('link', { name: 'All devices' }).click();
  await qa.getByRole('heading', { name: 'One device owes events', exact: true }).waitFor();
  const row = qa.getByRole('row', { name: /^tab-lost/ });
  await row.getByText('Owes events').waitFor();
  await row.getByText('3 events: number 3–5.').waitFor();
  await row.getByText('45 s').waitFor();
  await qa
    .getByRole('row', { name: /^tab-good/ })
    .getByText('In order')
    .waitFor();
  expect(await faultsSeenByAxe(qa)).toEqual([]);
});

test('a device that is retired as lost is told of in every answer, until it proves not to be', async () => {
  const row = qa.getByRole('row', { name: /^tab-lost/ });
  await row.getByRole('button', { name: 'Retire tab-lost' }).click();
  const dialog = qa.getByRole('dialog');
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await dialog.getByLabel('Reason').fill('Run over by the forklift');
  await dialog.getByRole('button', { name: 'Retire it as lost' }).click();
  await row.getByText('After number 6 nobody knows.').waitFor();
  await row.getByText('Run over by the forklift').waitFor();
  for (const address of [`/trace?item=R-1`, `/unit/${serial(30)}`]) {
    await qa.goto(scene.origin + address);
    await qa.getByText(/^Never complete: one device was lost/).waitFor();
    await qa.getByText(/Device tab-lost: number 3–5 and whatever followed number 6\./).waitFor();
    expect(await faultsSeenByAxe(qa)).toEqual([]);
  }
  await qa.goto(`${scene.origin}/devices`);
  await row.getByRole('button', { name: 'tab-lost is not lost' }).click();
  await dialog.getByLabel('Reason').fill('It was found and switched on');
  await dialog.getByRole('button', { name: 'It is not lost' }).click();
  await row.getByText('Owes events').waitFor();
});

test('an operator has no way to it, on the floor or by address', async () => {
  const operator = await scene.pageOf('op-1');
  await operator.getByText('One device owes events.').waitFor();
  expect(await operator.getByRole('link', { name: /devices/i }).count()).toBe(0);
  await operator.goto(`${scene.origin}/devices`);
  await operator.waitForURL('**/not-permitted**');
});
