import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { LANGUAGE_COOKIE, type Language } from '@/lib/domain/language';
import { formatInstant } from '@/lib/domain/time';
import { englishAmong, textsOn } from '@/tests/support/english-seen';
import { eventMaker } from '@/tests/support/event-maker';
import { sceneHistory, serial } from '@/tests/support/scene-history';
import { openScene, type Scene } from '@/tests/support/screens-scene';

const TRANSLATED = ['es', 'zh-Hant'] as const;
const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
];
const ago = (minutes: number) => formatInstant((Date.now() - minutes * 60_000) * 1000);
const say = eventMaker(ago(25), '0198c0df');
const hourAgo = encodeURIComponent(ago(60));

let scene: Scene;
/** A tablet of each language, at which an administrator has signed in, who may open everything. */
const tablets = new Map<Language, Page>();

beforeAll(async () => {
  const of = (device: string, deviceSeq: number) => ({ device, deviceSeq, gate: 'record' as const });
  const mistaken = say.failed(serial(12), 'TEST-1', { operator: 'op-1' });
  scene = await openScene([
    ...sceneHistory(),
    say.passed(serial(20), 'TEST-1', { ...of('tab-owes', 4), operator: 'op-1' }),
    say.make(
      'unit.signed',
      { unit: serial(30), meaning: 'ok' },
      { ...of('tab-lost', 3), uncertaintyMs: 45_000 },
    ),
    say.deviceRetired('tab-lost'),
    mistaken,
    say.voided(mistaken.id),
    say.held('unit', serial(13)),
    say.held('item', 'R-2'),
    say.held('lot', 'L-7'),
    say.counted('R-1'),
    say.labelled('unit', serial(13)),
    say.removed(serial(13), 'R1'),
    say.returned(serial(1)),
  ]);
  for (const language of ['en', ...TRANSLATED] as const)
    tablets.set(language, await tabletOf('admin', language));
});
afterAll(() => scene?.close());

async function tabletOf(badge: string, language: Language): Promise<Page> {
  const page = await scene.pageOf(badge, { viewport: { width: 1024, height: 768 }, serviceWorkers: 'block' });
  await page.context().addCookies([{ name: LANGUAGE_COOKIE, value: language, url: scene.origin }]);
  return page;
}

const must = (condition: object) => ({ must: true, ...condition });
const narrowed = (...conditions: object[]) =>
  `/trace/narrow?conditions=${encodeURIComponent(JSON.stringify(conditions))}`;

/** Every page, in what it looks like with something to show, without, and when the address is wrong. */
const ADDRESSES = [
  ...['floor', 'station', 'changeover', 'items', 'counts', 'pack', 'holds', 'exceptions', 'returns'],
  ...['devices', 'plant', 'people', 'this-device', 'not-permitted', 'nowhere', 'setup', 'trust', 'offline'],
  ...['labels', 'labels?kind=unit&codes=WX4C0000001&show=1'],
  ...['trace', 'trace?code=NOBODY', 'trace?code=L-7', 'trace?item=R-1', 'trace?item=R-1&certainty=possible'],
  ...['trace?lot=L-7', 'trace?part=R-10K', 'trace?station=L1-PLACE', `trace?operator=op-1&from=${hourAgo}`],
  ...[`trace?item=R-1&knownAt=${hourAgo}`, 'trace?item=R-1&station=TEST-1', 'trace?at=never&item='],
  ...['trace/difference?item=R-1', `trace/difference?item=R-1&since=${hourAgo}`, 'trace/difference?since=1'],
  ...['slot-timeline', 'slot-timeline?station=L1-PLACE', 'slot-timeline?station=NOBODY'],
  ...['slot-timeline?station=L1-PLACE&from=1&to=2'],
  ...[1, 11, 12, 13, 20, 30].map((number) => `unit/${serial(number)}`),
  ...[
    'unit/NOBODY',
    'unit/NOBODY/genealogy',
    `unit/${serial(1)}?at=${hourAgo}`,
    `unit/${serial(1)}/genealogy`,
  ],
  ...['item/R-1', 'item/R-2', 'item/ST-1', 'item/NOBODY', 'lot/L-7', 'lot/NOBODY'],
  ...['container/PAL-1', 'container/CT-1', 'container/NOBODY', 'shipment/SH-1', 'shipment/NOBODY'],
]
  .map((path) => `/${path}`)
  .concat([
    '/trace/narrow',
    '/trace/narrow?conditions=1',
    narrowed(must({ kind: 'used', item: 'R-1' }), must({ kind: 'place', place: 'stock' })),
    narrowed(must({ kind: 'used', part: 'R-10K', station: 'L1-PLACE' }), {
      must: false,
      kind: 'processed',
      result: 'fail',
      operation: 'test',
    }),
  ]);

// Whether every text has both languages is a unit test's; a text that is written into a page shows in either, and
// Spanish is the longest of all.
test.each(ADDRESSES.map((address, index) => [address, index % 4 === 3 ? 'zh-Hant' : 'es'] as const))(
  '%s has nothing in English on a device in %s, and fits',
  (address, language) => expectTranslated(tablets.get(language), language, address),
);

test.each(ADDRESSES.filter((_, index) => index % 8 === 0))(
  'read in English, %s is full of it: the check looks at something',
  async (address) => {
    const english = tablets.get('en');
    await english?.goto(scene.origin + address);
    expect(englishAmong(english === undefined ? [] : await textsOn(english), 'es').length).toBeGreaterThan(2);
  },
);

test.each([
  ['operator', 'es'],
  ['handler', 'zh-Hant'],
  ['qa', 'es'],
  ['packer', 'zh-Hant'],
] as const)('what the rail of the role %s leads to has nothing in English either', async (role, language) => {
  await scene.addPerson(`${role}-1`, role);
  const page = await tabletOf(`${role}-1`, language);
  await page.goto(`${scene.origin}/floor`);
  const links = await page.getByRole('navigation').first().getByRole('link').all();
  const addresses = await Promise.all(links.map((link) => link.getAttribute('href')));
  const screens = [...new Set(addresses)].filter((address) => address?.match(/^\/\w/));
  expect(screens.length).toBeGreaterThan(4);
  for (const address of screens) await expectTranslated(page, language, address ?? '');
  await page.context().close();
});

async function expectTranslated(
  page: Page | undefined,
  language: (typeof TRANSLATED)[number],
  address: string,
): Promise<void> {
  await page?.goto(scene.origin + address);
  if (page === undefined) throw new Error(`There is no tablet in ${language}.`);
  expect(await page.locator('html').getAttribute('lang')).toBe(language);
  // A slot of the scene is called by a word that English texts have too.
  const texts = (await textsOn(page)).map((text) => text.replaceAll('stencil', '1-01'));
  expect(englishAmong(texts, language), `${address} in ${language}`).toEqual([]);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width, `${address} in ${language}, ${size.width} wide`).toBeLessThanOrEqual(size.width);
  }
}
