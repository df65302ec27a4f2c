import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { replicaHas } from '@/tests/support/replica-has';
import { chooseStation, openShift, type Shift, scan, verdict } from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

/** A tablet with a station and a worker that has kept everything. */
async function tabletAt(station: string, badge = 'op-1'): Promise<Page> {
  const page = await shift.tablet(badge, '/station', { serviceWorkers: 'allow' });
  await chooseStation(page, station);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  return page;
}

test('after one visit a station opens with the server process killed, hard reload included, and asks for nobody twice', async () => {
  const page = await tabletAt('L1-TEST');
  await page.getByText('Server answers').waitFor();
  await shift.kill();
  try {
    await page.reload();
    await page.getByText('No server').waitFor();
    await page.getByText('Person op-1').waitFor();
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('L1-TEST');
    expect(await faultsSeenByAxe(page)).toEqual([]);
    await page.goto(`${shift.origin}/trace`);
    await page.getByText('This screen needs the server').waitFor();
    expect(await faultsSeenByAxe(page)).toEqual([]);
    await page.getByRole('link', { name: 'Go to the station' }).click();
    await page.getByText('Person op-1').waitFor();
  } finally {
    await shift.revive();
  }
  await page.getByText('Server answers').waitFor({ timeout: 40_000 });
});

test('a shift goes on without the server: units are judged, started and worked on, and every result arrives once', async () => {
  const [due, early, held, fresh] = [serial(901), serial(902), serial(903), serial(904)];
  for (const unit of [due, held]) await shift.send(...shift.unit(unit, 2));
  await shift.send(...shift.unit(early, 1));
  await shift.send(shift.say.held('unit', held));
  const page = await tabletAt('L1-TEST');
  const printer = await tabletAt('L1-PRINT');
  for (const each of [page, printer]) await replicaHas(each, due);
  await shift.kill();
  try {
    await page.reload();
    await page.getByText('No server').waitFor();
    await page.getByText('Ready for the next unit.').waitFor();
    await scan(page, held);
    await verdict(page, 'STOP', held);
    await page.getByText('Without the server, by what it said at').waitFor();
    await scan(page, early);
    await verdict(page, 'CHECK', early);
    await page.getByText('Not decided:').waitFor();
    expect(await faultsSeenByAxe(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await scan(page, due);
    await verdict(page, 'GO', due);
    // A second unit has its own verdict without the server too.
    await scan(page, held);
    await verdict(page, 'STOP', held);
    await page.getByText(`Give the result of ${due} first.`).waitFor();
    await page
      .getByRole('button', { name: `Do not check ${held}` })
      .first()
      .click();
    await page.keyboard.press('F8');
    await page.getByText(`${due}: Pass kept on this tablet`).waitFor();
    await page.getByText('one entry waits here').waitFor();
    await scan(page, due);
    await page.getByText('It has passed test already.').waitFor();
    await page.keyboard.press('Escape');
    await scan(printer, fresh);
    await printer.getByRole('button', { name: 'Start as WX4 C' }).click();
    await verdict(printer, 'GO', fresh);
    await printer.keyboard.press('F8');
    await printer.getByText(`${fresh}: Pass kept on this tablet`).waitFor();
    await printer.reload();
    await printer.getByText('2 entries wait here').waitFor();
  } finally {
    await shift.revive();
  }
  await page.getByText('nothing waits here').waitFor({ timeout: 40_000 });
  await printer.getByText('nothing waits here').waitFor({ timeout: 40_000 });
  const resultsAt = async (unit: string, station: string) =>
    (await shift.asBuilt(unit)).events
      .filter((event) => event.type === 'unit.processed' && event.station === station)
      .map((event) => event.body.result);
  expect(await resultsAt(due, 'L1-TEST')).toEqual(['pass']);
  expect(await resultsAt(fresh, 'L1-PRINT')).toEqual(['pass']);
  expect(await resultsAt(early, 'L1-TEST')).toEqual([]);
});

test('without the server a tablet lets in who signed in on it lately, and nobody else', async () => {
  const page = await tabletAt('L1-TEST');
  await shift.kill();
  try {
    await page.reload();
    await page.getByRole('button', { name: 'Change person' }).click();
    await page.getByRole('form', { name: 'At a station' }).waitFor();
    expect(await faultsSeenByAxe(page)).toEqual([]);
    await scan(page, 'qa-1');
    await typePin(page, '4711');
    await page.getByText('this tablet knows only people who signed in on it').waitFor();
    await page.getByLabel('Badge').fill('op-1');
    await page.getByLabel('PIN', { exact: true }).fill('');
    await typePin(page, await wrongPin(page, 'op-1'));
    await page.getByText('do not go together').waitFor();
    await page.getByLabel('PIN', { exact: true }).fill('');
    await typePin(page, '4711');
    await page.getByText('Person op-1').waitFor();
  } finally {
    await shift.revive();
  }
});

async function typePin(page: Page, pin: string): Promise<void> {
  for (const digit of pin) await page.getByRole('button', { name: `Digit ${digit}` }).click();
  await page.getByRole('button', { name: 'Sign in with PIN' }).click();
}

/** A PIN that the few kept bits tell from the right one: 63 of 64 wrong ones are. The key itself stays in the browser. */
function wrongPin(page: Page, badge: string): Promise<string> {
  return page.evaluate(async (who) => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('reelkin-people');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const read = (store: string, key: string) =>
      new Promise<unknown>((resolve) => {
        const request = db.transaction(store).objectStore(store).get(key);
        request.onsuccess = () => resolve(request.result);
      });
    const key = await read('key', 'hmac');
    const person = await read('person', who);
    if (!(key instanceof CryptoKey) || key.extractable) throw new Error('The key can be read out.');
    const { salt, bits } = Object(Object(person).check);
    for (let pin = 1000; pin < 2000; pin += 1) {
      const text = new TextEncoder().encode(JSON.stringify([salt, who, String(pin)]));
      const digest = new Uint8Array(await crypto.subtle.sign('HMAC', key, text));
      if (((digest[0] ?? 0) & 63) !== bits) return String(pin);
    }
    throw new Error('Every PIN would do.');
  }, badge);
}
