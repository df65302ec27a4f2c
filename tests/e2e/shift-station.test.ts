import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import {
  chooseStation,
  expectFocusInScanBox,
  openShift,
  type Shift,
  scan,
  scanAgain,
  signInWithPin,
  verdict,
} from '@/tests/support/shift-scene';

let shift: Shift;

beforeAll(async () => {
  shift = await openShift();
});
afterAll(() => shift?.close());

const serial = (number: number) => `WX4C${String(number).padStart(7, '0')}`;

async function station(badge: string, code: string): Promise<Page> {
  const page = await shift.tablet(badge, '/station');
  await chooseStation(page, code);
  return page;
}

test('a shift at the printer: new serials are started, pass, and the tablet keeps its station', async () => {
  const page = await shift.tablet('op-1', '/station');
  await page.getByText('Which station is this?').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await chooseStation(page, 'L1-PRINT');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  for (const number of [101, 102]) {
    await scan(page, serial(number));
    await verdict(page, 'CHECK', `${serial(number)} is new here.`);
    if (number === 101) expect(await faultsSeenByAxe(page)).toEqual([]);
    await page.getByRole('button', { name: 'Start as WX4 C' }).click();
    await verdict(page, 'GO', serial(number));
    await expectFocusInScanBox(page);
    await page.getByRole('button', { name: 'Pass', exact: true }).click();
    await page.getByText(`${serial(number)}: Pass recorded`).waitFor();
    await verdict(page, 'SCAN', 'Ready for the next unit.');
    await expectFocusInScanBox(page);
  }
  const { events, draws } = await shift.asBuilt(serial(101));
  expect(events.map((event) => event.type)).toEqual(['unit.started', 'unit.processed']);
  expect(events[1]).toMatchObject({ operator: 'op-1', station: 'L1-PRINT', deviceSeq: 2 });
  expect(events[1]?.body).toHaveProperty('startedAt');
  expect(draws.map((draw) => draw.item)).toEqual(['ST-1']);
  const history = page.getByRole('region', { name: 'Last results here' });
  await history.getByText(serial(102)).waitFor();
  await page.reload();
  await page.getByText('L1-PRINT').first().waitFor();
  await verdict(page, 'SCAN', 'Ready for the next unit.');
});

test('every main reason of a no-go has its words, and what to do', async () => {
  const [fresh, held, failed, scrap, packed] = [
    serial(111),
    serial(112),
    serial(113),
    serial(114),
    serial(115),
  ];
  const { say, unit, finished } = shift;
  await shift.send(
    ...unit(fresh, 0),
    ...unit(held, 1),
    ...unit(failed, 2),
    ...unit(scrap, 1),
    ...finished(packed),
    say.held('unit', held),
    say.failed(failed, 'L1-TEST'),
    say.scrapped(scrap),
    say.packed(packed, 'CT-9'),
  );
  const page = await station('op-1', 'L1-PLACE');
  for (const [code, title, todo] of [
    [serial(999), 'Unknown unit', 'Read the label again.'],
    [fresh, 'Wrong step', 'Take the unit to print.'],
    [held, 'On hold', 'on the hold shelf and tell QA'],
    [failed, 'Failed and not passed again', 'Take the unit to repair, then back to test.'],
    [scrap, 'Scrapped', 'Put the unit into the scrap box.'],
    [packed, 'Already packed', 'Take the unit out of its container'],
    ['R-C', 'Unknown unit', 'R-C is no unit: it is Reel C-100N.'],
  ] as const) {
    await scan(page, code);
    await verdict(page, 'STOP', `No-go for ${code}.`);
    await page.getByText(title, { exact: true }).first().waitFor();
    await page.getByText(todo).first().waitFor();
    await expectFocusInScanBox(page);
  }
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('empty slots, wrong parts and missing qualification stop a unit', async () => {
  const { say, unit } = shift;
  await shift.send(...unit(serial(121), 1));
  const page = await station('op-1', 'L2-PLACE');
  await page.getByRole('region', { name: 'Slots' }).getByText('0 of 2 ready').waitFor();
  await scan(page, serial(121));
  await page.getByText('Slot 1-01 of L2-PLACE has nothing in it. It needs C-100N.').waitFor();
  await page.getByRole('link', { name: 'Go to changeover' }).waitFor();

  const wrong = { gate: 'record' } as const;
  await shift.send(
    say.mounted('R-R', 'L2-PLACE', '1-01', wrong),
    say.mounted('R-C', 'L2-PLACE', '1-02', wrong),
  );
  await scanAgain(page, serial(121));
  await page.getByText('Slot 1-01 of L2-PLACE needs C-100N; R-R holds R-10K.').waitFor();

  const newcomer = await station('op-new', 'L1-PRINT');
  await newcomer.getByText('op-new is not qualified for print here.').waitFor();
  await scan(newcomer, serial(121));
  await newcomer.getByText('Badge op-new is not qualified for print.').waitFor();
});

test('a fail has its defect and position, a second one holds the unit, and QA can undo it', async () => {
  const unit = serial(131);
  await shift.send(...shift.unit(unit, 2));
  const page = await station('op-1', 'L1-TEST');
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  await page.getByRole('button', { name: 'Fail', exact: true }).click();
  await page.getByText(`What is wrong with ${unit}?`).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await scan(page, 'BRIDGE');
  await page.getByText('Where is BRIDGE?').waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'C2', exact: true }).click();
  await page.getByText('BRIDGE at C2').waitFor();
  await page.getByLabel('Note (optional)').fill('seen twice');
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Record fail' }).click();
  await page.getByText(`${unit}: Fail recorded`).waitFor();

  await scan(page, unit);
  await verdict(page, 'GO', 'Failed 1 of 2 times at test.');
  await page.keyboard.press('F9');
  await page.getByRole('button', { name: 'BRIDGE' }).click();
  await scan(page, 'C1');
  await page.keyboard.press('F9');
  await page.getByRole('region', { name: 'Last results here' }).getByText('on hold').first().waitFor();
  await page.getByText('To undo one, ask QA or an engineer.').waitFor();
  await scan(page, unit);
  await page.getByText(`Unit ${unit} is on hold: Failed too often at one step`).waitFor();

  const qa = await station('qa-1', 'L1-TEST');
  await qa
    .getByRole('button', { name: `Undo the result of ${unit}` })
    .first()
    .click();
  const dialog = qa.getByRole('dialog');
  await dialog.getByLabel('Why?').fill('wrong unit on the bench');
  expect(await faultsSeenByAxe(qa)).toEqual([]);
  await dialog.getByRole('button', { name: 'Undo' }).click();
  await qa.getByRole('region', { name: 'Last results here' }).getByText('undone').waitFor();
  await expectFocusInScanBox(qa);
  await scan(qa, unit);
  await verdict(qa, 'GO', 'Failed 1 of 2 times at test.');

  const { events } = await shift.asBuilt(unit);
  const fails = events.filter((event) => event.type === 'unit.processed' && event.body.result === 'fail');
  expect(fails.map((event) => event.body.defects)).toEqual([
    [{ code: 'BRIDGE', position: 'C2', note: 'seen twice' }],
    [{ code: 'BRIDGE', position: 'C1' }],
  ]);
});

test('two scans in quick succession are both checked, in their order', async () => {
  const [first, second] = [serial(141), serial(142)];
  await shift.send(...shift.unit(first, 2), ...shift.unit(second, 2));
  const page = await station('op-1', 'L1-TEST');
  await scan(page, first);
  await scan(page, second);
  await verdict(page, 'WAIT', `${second}: not the unit in work. It may be worked on when its turn comes.`);
  await page.getByText(`In work: ${first}. Its result is still owed.`).waitFor();
  // Nothing on the screen can be read as a go for the second one.
  expect(await page.getByText('GO', { exact: true }).count()).toBe(0);
  await page.getByRole('region', { name: 'Waiting their turn' }).getByText(second).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: `Pass ${first}` }).waitFor();
  await scan(page, 'CMD:PASS');
  await verdict(page, 'GO', second);
  await page.getByText(`${first}: Pass recorded`).waitFor();
  await page.getByRole('button', { name: 'Pass', exact: true }).click();
  await page.getByText(`${second}: Pass recorded`).waitFor();

  await scan(page, serial(998));
  await scan(page, first);
  await verdict(page, 'STOP', `No-go for ${serial(998)}.`);
  await page.getByRole('region', { name: 'Waiting their turn' }).getByText(first).waitFor();
  await page.getByRole('button', { name: 'Understood' }).click();
  await verdict(page, 'CHECK', first);
});

test('a second unit with a no-go of its own says so while the first is in work', async () => {
  const [first, wrong] = [serial(143), serial(144)];
  await shift.send(...shift.unit(first, 2), ...shift.unit(wrong, 0));
  const page = await station('op-1', 'L1-TEST');
  await scan(page, first);
  await verdict(page, 'GO', first);
  await scan(page, wrong);
  await verdict(page, 'STOP', `${wrong}: not the unit in work, and a no-go of its own.`);
  await page.getByText(`Give the result of ${first} first.`).waitFor();
  expect(await page.getByText('GO', { exact: true }).count()).toBe(0);
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page
    .getByRole('button', { name: `Do not check ${wrong}` })
    .first()
    .click();
  await verdict(page, 'GO', first);
  await scan(page, 'op-1');
  await page.getByText('That is the badge op-1.').waitFor();
  await page.getByRole('button', { name: 'Pass', exact: true }).click();
  await page.getByText(`${first}: Pass recorded`).waitFor();

  await scan(page, first);
  await verdict(page, 'CHECK', 'It has passed test already.');
  expect(await page.getByText('GO', { exact: true }).count()).toBe(0);
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Do test again' }).click();
  await verdict(page, 'GO', first);
});

test('a person changes at the station and comes back to it', async () => {
  const page = await station('op-1', 'L1-TEST');
  await page.getByText('Person op-1').waitFor();
  await page.getByRole('button', { name: 'Change person' }).click();
  await page.getByRole('form', { name: 'At a station' }).waitFor();
  await signInWithPin(page, 'qa-1');
  await page.getByText('Person qa-1').waitFor();
  await page.getByText('L1-TEST').first().waitFor();
});

test('nothing but the keyboard is needed', async () => {
  const unit = serial(151);
  await shift.send(...shift.unit(unit, 2));
  const page = await station('op-1', 'L1-TEST');
  await scan(page, unit);
  await verdict(page, 'GO', unit);
  await page.keyboard.press('F9');
  await scan(page, 'DUST');
  await page.getByText('Where is DUST?').waitFor();
  await page.keyboard.press('Escape');
  await page.getByText(`What is wrong with ${unit}?`).waitFor();
  await page.keyboard.press('Escape');
  await verdict(page, 'GO', unit);
  // Past the camera and the button of the box.
  for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByText(`${unit}: Pass recorded`).waitFor();
  await expectFocusInScanBox(page);
});
