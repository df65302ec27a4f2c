import type { Page, Route } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import {
  chooseStation,
  openShift,
  type Shift,
  scan,
  signInWithPin,
  verdict,
} from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

async function atTest(...units: string[]): Promise<Page> {
  for (const unit of units) await shift.send(...shift.unit(unit, 2));
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  return page;
}

async function resultsOf(unit: string): Promise<unknown[]> {
  const { events } = await shift.asBuilt(unit);
  return events
    .filter((event) => event.type === 'unit.processed' && event.station === 'L1-TEST')
    .map((event) => event.body.result);
}

const later = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

test('the server is slow: the next unit is scanned meanwhile, and every result is recorded once', async () => {
  const units = [serial(201), serial(202), serial(203)];
  const page = await atTest(...units);
  await page.route('**/api/**', async (route) => {
    await later(1200);
    await route.continue();
  });
  for (const unit of units) {
    await scan(page, unit);
    await verdict(page, 'GO', unit);
    await page.getByRole('button', { name: 'Pass', exact: true }).dblclick({ delay: 20 });
  }
  await page.getByText(`${units[2]}: Pass recorded`).waitFor();
  for (const unit of units) expect(await resultsOf(unit)).toEqual(['pass']);
});

test('answers that are lost cost nothing: the same event is sent again', async () => {
  const unit = serial(211);
  const page = await atTest(unit);
  let lostCount = 0;
  const sent: string[] = [];
  await page.route('**/api/events', async (route: Route) => {
    // A pass of the person may come beside the same event as soon as the device has one.
    const { events } = z.object({ events: z.array(z.unknown()) }).parse(route.request().postDataJSON());
    sent.push(JSON.stringify(events));
    lostCount += 1;
    if (lostCount === 1) return route.abort();
    if (lostCount === 2) {
      await route.fetch();
      return route.abort();
    }
    if (lostCount === 3) return route.fulfill({ status: 503, body: 'no' });
    return route.continue();
  });
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  await page.keyboard.press('F8');
  await page.getByText('The server does not answer. One entry is kept on this device').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByText(`${unit}: Pass recorded`).waitFor();
  expect(await resultsOf(unit)).toEqual(['pass']);
  expect(sent.length).toBeGreaterThanOrEqual(4);
  expect([...new Set(sent)]).toHaveLength(1);
});

test('a reload loses neither the unit in work nor a result that is not sent yet', async () => {
  const [first, second] = [serial(221), serial(222)];
  const page = await atTest(first, second);
  await scan(page, first);
  await verdict(page, 'GO', first);
  await page.keyboard.press('F9');
  await scan(page, 'CRACK');
  await scan(page, 'C3');
  await page.getByText('CRACK at C3').waitFor();
  await page.reload();
  await page.getByText('CRACK at C3').waitFor();
  await page.route('**/api/events', (route) => route.abort());
  await page.getByRole('button', { name: 'Record fail' }).click();
  await page.getByText(`${first}: Fail given; the server does not have it yet`).waitFor();
  await page.reload();
  await verdict(page, 'SCAN', 'Ready for the next unit.');
  await page.unroute('**/api/events');
  await expect.poll(() => resultsOf(first), { timeout: 60_000 }).toEqual(['fail']);
  await page.reload();
  await scan(page, second);
  await verdict(page, 'GO', second);
  expect(await resultsOf(first)).toEqual(['fail']);
});

test('no answer about a unit is no go: it is asked again by itself', async () => {
  const unit = serial(231);
  const page = await atTest(unit);
  await page.route('**/api/scan?*', (route) => route.abort());
  await scan(page, unit);
  await page.getByText(`The server does not answer. ${unit} is not checked yet`).waitFor();
  await page.unroute('**/api/scan?*');
  await verdict(page, 'GO', unit);
});

test('a result that the server refuses is told until it is read, and nothing behind it is lost', async () => {
  const [first, second] = [serial(241), serial(242)];
  const page = await atTest(first, second);
  await scan(page, first);
  await verdict(page, 'GO', first);
  await shift.send(shift.say.held('unit', first));
  await page.keyboard.press('F8');
  await verdict(page, 'STOP', `Not recorded: Unit processed, ${first}`);
  await page.getByText(`${first}: Pass NOT recorded`).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, second);
  await page.getByRole('region', { name: 'Waiting their turn' }).getByText(second).waitFor();
  await page.reload();
  await verdict(page, 'STOP', `Not recorded: Unit processed, ${first}`);
  await page.getByRole('button', { name: 'Understood' }).click();
  await verdict(page, 'GO', second);
  expect(await resultsOf(first)).toEqual([]);
});

test('without a session the station says so, keeps what was done, and goes on after signing in', async () => {
  const unit = serial(251);
  const page = await atTest(unit);
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  await page.context().clearCookies();
  await page.keyboard.press('F8');
  await page.getByText('Your session has ended. One entry is kept on this device.').waitFor();
  await page.getByRole('link', { name: 'Sign in' }).first().click();
  await signInWithPin(page, 'op-1');
  await verdict(page, 'SCAN', 'Ready for the next unit.');
  await expect.poll(() => resultsOf(unit), { timeout: 60_000 }).toEqual(['pass']);
});

test('two tabs of one tablet share its numbers, and each event is sent once', async () => {
  const [first, second] = [serial(261), serial(262)];
  const page = await atTest(first, second);
  const other = await page.context().newPage();
  await other.goto(`${shift.origin}/station`);
  await verdict(other, 'SCAN', 'Ready for the next unit.');
  for (const [tab, unit] of [
    [page, first],
    [other, second],
  ] as const) {
    await tab.bringToFront();
    await scan(tab, unit);
    await verdict(tab, 'GO', unit);
  }
  await page.keyboard.press('F8');
  await other.keyboard.press('F8');
  await page.getByText(`${first}: Pass recorded`).waitFor();
  await other.getByText(`${second}: Pass recorded`).waitFor();
  const stamps = [];
  for (const unit of [first, second]) {
    const { events } = await shift.asBuilt(unit);
    const last = events.at(-1);
    stamps.push([last?.device, last?.deviceSeq]);
  }
  expect(stamps[0]?.[0]).toBe(stamps[1]?.[0]);
  expect(new Set(stamps.map(([, number]) => number))).toEqual(new Set([1, 2]));
});
