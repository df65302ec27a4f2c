import { gzipSync } from 'node:zlib';
import type { Response } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { chooseStation, openShift, type Shift, scan, verdict } from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

test('a failed unit is repaired: part off, new part on, from a reel or from another unit', async () => {
  const [unit, donor] = [serial(401), serial(402)];
  const { say } = shift;
  await shift.send(
    ...shift.unit(unit, 2),
    ...shift.unit(donor, 2),
    say.make(
      'unit.processed',
      { unit, result: 'fail', defects: [{ code: 'CRACK', position: 'C2' }] },
      { station: 'L1-TEST' },
    ),
    say.removed(donor, 'R1'),
  );
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'REWORK-1');
  await scan(page, unit);
  await page.getByText(`Repair ${unit}`).waitFor();
  await page.getByText('Failed at test: CRACK at C2').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'C2');
  expect(await page.getByLabel('Reason (optional)').inputValue()).toBe('CRACK');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Part is off' }).click();
  await page.getByText('What goes to C2?').waitFor();
  await page.getByText('The BOM says C-100N.').waitFor();
  await scan(page, 'R-R');
  await verdict(page, 'STOP', 'Wrong part for C2: R-R is R-10K; the BOM says C-100N.');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'R-C');
  await page.getByText('C2: new part from R-C').waitFor();

  await page.getByRole('button', { name: 'R1', exact: true }).click();
  await page.getByRole('button', { name: 'Part is off' }).click();
  await page.getByText('What goes to R1?').waitFor();
  await scan(page, donor);
  await page.getByText(`Which position of ${donor} does it come from?`).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'R1', exact: true }).click();
  await page.getByText(`R1: new part from ${donor}`).waitFor();
  await page.getByRole('button', { name: 'Repair is done' }).click();
  await verdict(page, 'SCAN', 'Ready for the next unit.');

  const { events } = await shift.asBuilt(unit);
  expect(events.slice(-4).map((event) => [event.type, event.body])).toEqual([
    ['part.removed', { unit, position: 'C2', reason: 'CRACK' }],
    ['part.installed', { unit, position: 'C2', item: 'R-C' }],
    ['part.removed', { unit, position: 'R1' }],
    ['part.installed', { unit, position: 'R1', fromUnit: donor, fromPosition: 'R1' }],
  ]);
});

test('assembly: lots are scanned once and remembered, and the power supply goes in before the pass', async () => {
  const [first, second] = [serial(411), serial(412)];
  const supplies = ['PSU2B0000411', 'PSU2B0000412'];
  const { say } = shift;
  await shift.send(
    say.received({ item: 'LOT-J2', kind: 'lot', part: 'J-TB8' }),
    say.received({ item: 'CAR-1', kind: 'carrier' }),
    ...shift.unit(first, 3),
    ...shift.unit(second, 3),
    ...supplies.flatMap((unit) => [
      say.started({ unit, product: 'PSU2', revision: 'B' }),
      say.passed(unit, 'PSU-1'),
    ]),
  );
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'ASSY-1');
  await scan(page, first);
  await verdict(page, 'GO', first);
  await scan(page, 'LOT-J');
  await page.getByText('from LOT-J').waitFor();
  await scan(page, 'CAR-1');
  await page.getByText('Also used: CAR-1').waitFor();
  await scan(page, supplies[0] ?? '');
  await page.getByText(`${supplies[0]} at A1: in.`).waitFor();
  await scan(page, 'R-C');
  await page.getByText('R-C (C-100N) is not scanned for this product.').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'CMD:PASS');
  await page.getByText(`${first}: Pass recorded`).waitFor();

  await scan(page, second);
  await verdict(page, 'GO', second);
  await page.getByText('from LOT-J').waitFor();
  await page.getByText('PSU2 at A1: not in yet. Scan it to put it in.').waitFor();
  await page.getByRole('button', { name: 'Use another lot for J-TB8' }).click();
  await page.keyboard.press('F8');
  await page.getByRole('heading', { name: 'Not complete yet' }).waitFor();
  await page.getByText('PSU2 at A1: not in yet. Scan it to put it in.').waitFor();
  await page.getByText(`Passed now, ${second} goes on incomplete.`).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'LOT-J2');
  await page.getByText('from LOT-J2').waitFor();
  await page.getByRole('button', { name: 'Pass it incomplete' }).click();
  await page.getByText(`${second}: Pass recorded`).waitFor();

  const draws = (await shift.asBuilt(first)).draws.map((draw) => [draw.item, draw.positions]);
  expect(draws).toContainEqual(['LOT-J', ['J1', 'J2']]);
  expect(draws).toContainEqual(['CAR-1', []]);
  const desk = await shift.tablet('en-1', `/unit/${second}`);
  await desk.getByText('Not in it yet: PSU2 at A1').waitFor();

  const record = await shift.asBuilt(second);
  expect(record.draws.map((draw) => draw.item)).toContain('LOT-J2');
});

test('a station says go by word, shape, colour and sound, and no-go by others', async () => {
  const unit = serial(421);
  await shift.send(...shift.unit(unit, 2));
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  await page.evaluate(() => {
    const heard: number[] = [];
    Object.assign(window, { heard });
    const { prototype } = OscillatorNode;
    const start = prototype.start;
    prototype.start = function (when?: number) {
      heard.push(this.frequency.value);
      return start.call(this, when);
    };
  });
  const heard = () =>
    page.evaluate(() => {
      const all: unknown = Reflect.get(window, 'heard');
      return Array.isArray(all) ? all.splice(0).map(Number) : [];
    });
  const look = (word: string) =>
    page
      .getByRole('status')
      .filter({ hasText: word })
      .evaluate((panel) => ({
        colour: getComputedStyle(panel).backgroundColor,
        shape: panel.querySelector('svg')?.innerHTML,
        px: Number.parseFloat(getComputedStyle(panel.querySelector('p') ?? panel).fontSize),
      }));
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  const go = { ...(await look('GO')), sound: await heard() };
  await page.getByRole('button', { name: 'Put aside: records nothing' }).click();
  await scan(page, serial(990));
  await verdict(page, 'STOP', `No-go for ${serial(990)}.`);
  const stop = { ...(await look('STOP')), sound: await heard() };
  expect(go.colour).not.toBe(stop.colour);
  expect(go.shape).not.toBe(stop.shape);
  expect([go.px, stop.px].every((px) => px >= 64)).toBe(true);
  expect(go.sound.length).toBeGreaterThan(0);
  expect(stop.sound.length).toBeGreaterThan(0);
  expect(Math.max(...stop.sound) * 2).toBeLessThan(Math.min(...go.sound));
});

test('everything to press at a station is large enough for a glove, and all text for arm’s length', async () => {
  const unit = serial(431);
  await shift.send(...shift.unit(unit, 2));
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  const seen = await page.getByRole('main').evaluate((main) => {
    const visible = [...main.querySelectorAll('button, input')].filter((element) =>
      element.checkVisibility(),
    );
    const targets = visible.map((element) => ({
      name: element.textContent,
      px: element.getBoundingClientRect().height,
    }));
    const texts: { text: string; px: number }[] = [];
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const text = node.textContent?.trim() ?? '';
      if (text !== '' && node.parentElement !== null)
        texts.push({ text, px: Number.parseFloat(getComputedStyle(node.parentElement).fontSize) });
    }
    return { targets, texts };
  });
  expect(seen.targets.length).toBeGreaterThan(4);
  expect(seen.targets.filter(({ px }) => px < 56)).toEqual([]);
  expect(seen.texts.length).toBeGreaterThan(6);
  expect(seen.texts.filter(({ px }) => px < 20)).toEqual([]);
});

test('the first load of a station is less than 250 KiB of gzip JavaScript', async () => {
  const page = await shift.tablet('op-1', '/station');
  await chooseStation(page, 'L1-TEST');
  const cold = await shift.browser.newContext({ storageState: await page.context().storageState() });
  const fresh = await cold.newPage();
  const bodies: Promise<Buffer>[] = [];
  const note = (response: Response) => {
    if (response.url().endsWith('.js')) bodies.push(response.body());
  };
  fresh.on('response', note);
  await fresh.goto(`${shift.origin}/station`);
  await verdict(fresh, 'SCAN', 'Ready for the next unit.');
  // What comes later is no first load.
  fresh.off('response', note);
  const sizes = (await Promise.all(bodies)).map((body) => gzipSync(body).length);
  expect(sizes.length).toBeGreaterThan(5);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(250 * 1024);
});
