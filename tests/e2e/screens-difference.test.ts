import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { formatInstant } from '@/lib/domain/time';
import { formatMoment } from '@/lib/ui/format-moment';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { eventMaker } from '@/tests/support/event-maker';
import { SCENE_PLANT, sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

const LATE_UNIT = serial(200);
const VOIDED_UNIT = serial(5);

let scene: Scene;
let page: Page;
/** When the report was sent, as a date-time field takes it. */
let reported: string;

beforeAll(async () => {
  const history = sceneHistory();
  scene = await openScene(history);
  page = await scene.pageOf('admin');
  // Fields tell moments by the second: what comes late must arrive in a later one.
  const reportedMs = Math.ceil(Date.now() / 1000) * 1000;
  const timeZone = SCENE_PLANT.site.timeZone;
  reported = formatMoment(reportedMs, { timeZone, precision: 'second' }).replace(' ', 'T');
  while (Date.now() <= reportedMs) await new Promise((resolve) => setTimeout(resolve, 20));
  const make = eventMaker();
  const tablet = { device: 'tab-7', deviceSeq: 1 };
  const ago = (minutes: number) => ({ at: formatInstant((Date.now() - minutes * 60_000) * 1000) });
  const mistaken = history.find(
    ({ type, station, body }) =>
      type === 'unit.processed' && station === 'L1-PLACE' && 'unit' in body && body.unit === VOIDED_UNIT,
  );
  await scene.send([
    make.started({ unit: LATE_UNIT, product: 'WX4', revision: 'C' }, ago(301)),
    make.passed(LATE_UNIT, 'L1-PLACE', { ...ago(300), ...tablet, operator: 'op-1', gate: 'record' }),
    make.voided(mistaken?.id ?? '', ago(0)),
    make.mounted('R-3', 'L1-PLACE', '1-01', { ...ago(30), operator: 'op-1', gate: 'record' }),
  ]);
});
afterAll(() => scene?.close());

const tile = (name: string) =>
  page.getByRole('list', { name: 'Changes' }).getByRole('listitem').filter({ hasText: name });
const entry = (text: string) => page.getByRole('listitem').filter({ hasText: text });

test('an answer asks what changed since the report was sent, and names units and events', async () => {
  await page.goto(`${scene.origin}/trace?item=R-1`);
  await page.getByRole('link', { name: 'What changed since…' }).press('Enter');
  await page.getByRole('heading', { name: 'Where-used of item R-1: what changed' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByLabel('Since').fill(reported);
  await page.getByRole('button', { name: 'Compare' }).press('Enter');
  await page.getByText(`${reported.replace('T', ' ')}: 1`, { exact: false }).waitFor();
  await tile('Joined').getByText(/^1\b/).first().waitFor();
  const joined = entry('Unit processed at L1-PLACE by op-1').filter({ hasText: LATE_UNIT });
  await joined.getByRole('row', { name: `${LATE_UNIT} Joined Not in the answer Certain Contains` }).waitFor();
  await joined
    .getByText(/recorded .* later/)
    .first()
    .waitFor();
  const left = entry('Event voided').filter({ hasText: 'It takes away:' });
  await left.getByRole('row', { name: new RegExp(`^${VOIDED_UNIT} Left Certain`) }).waitFor();
  await left.getByRole('link', { name: VOIDED_UNIT, exact: true }).first().waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});

test('one late mount stands once, over all the units that it moved', async () => {
  const mounted = entry('Item mounted at L1-PLACE').filter({ hasText: 'R-3' });
  expect(await mounted.count()).toBe(1);
  expect(await mounted.getByRole('row', { name: /Left/ }).count()).toBeGreaterThan(1);
});

test('the file has every change', async () => {
  const link = page.getByRole('link', { name: 'CSV of every change' });
  const csv = await page.request.get(`${scene.origin}${await link.getAttribute('href')}`);
  const [heading = '', ...lines] = (await csv.text()).trim().split('\r\n');
  expect(heading).toMatch(/^unit,change,before,.*,complete as of [^,]*Z$/);
  expect(lines).toHaveLength(await page.getByRole('table').locator('tbody tr').count());
  expect(lines.filter((line) => line.startsWith(`${LATE_UNIT},joined,`))).toHaveLength(1);
});

test('where nothing changed the page says so, and a wrong order of moments is refused at the field', async () => {
  await page.goto(
    `${scene.origin}/trace/difference?item=ST-1&since=${encodeURIComponent(new Date().toISOString())}`,
  );
  await page.getByRole('heading', { name: 'Nothing changed' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByLabel('Since').fill('2026-03-02T08:15:00');
  await page.getByLabel('Until').fill('2026-03-02T08:14:00');
  await page.getByRole('button', { name: 'Compare' }).click();
  await page.getByText('The second moment must come after the first.').waitFor();
  await page.goto(`${scene.origin}/trace/difference?since=yesterday`);
  await page.getByRole('alert').filter({ hasText: 'since' }).waitFor();
});

test('the answer can be asked as it was known, says so, and leads back to now', async () => {
  await page.goto(`${scene.origin}/trace?item=R-1`);
  await page.getByText('At a moment', { exact: true }).press('Enter');
  await page.getByLabel('As it was known at').fill(reported);
  await page.getByRole('button', { name: 'Show', exact: true }).press('Enter');
  const known = `as it was known at ${reported.replace('T', ' ')}`;
  await page.getByRole('heading', { name: `Where-used of item R-1, ${known}` }).waitFor();
  expect(await page.getByRole('link', { name: LATE_UNIT }).count()).toBe(0);
  expect(await page.getByRole('button', { name: /^Hold these/ }).count()).toBe(0);
  expect(await page.getByRole('link', { name: 'CSV of everything' }).getAttribute('href')).toContain(
    'knownAt=',
  );
  expect(await faultsSeenByAxe(page)).toEqual([]);
  await page.getByRole('link', { name: 'What changed since…' }).click();
  await tile('Joined').waitFor();
  await page.getByRole('link', { name: 'The answer now' }).click();
  await page.getByRole('heading', { name: 'Where-used of item R-1', exact: true }).waitFor();
});
