import { randomBytes } from 'node:crypto';
import type { Browser, BrowserContextOptions, Page } from 'playwright';
import { expect } from 'vitest';
import { z } from 'zod';
import { runningClusterUrl } from '@/lib/data/embedded-cluster';
import { insertAccount } from '@/lib/data/people/insert-account';
import { openPeopleDb } from '@/lib/data/people/people-db';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Role } from '@/lib/domain/people/roles';
import { hashSecret } from '@/lib/server/people/secret-hash';
import { launchBrowser } from '@/tests/support/browser';
import { eventMaker } from '@/tests/support/event-maker';
import { startTestServer } from '@/tests/support/start-test-server';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';
import { typeAsScanner } from '@/tests/support/type-as-scanner';

const PIN = '4711';
// A page whose requests a test meets has no worker between itself and the server.
const TABLET = { viewport: { width: 1024, height: 768 }, serviceWorkers: 'block' } as const;

/** Everyone on the shift; all operators but `op-new` are qualified for everything. */
const PEOPLE: readonly (readonly [badge: string, role: Role])[] = [
  ['op-1', 'operator'],
  ['op-new', 'operator'],
  ['mh-1', 'handler'],
  ['qa-1', 'qa'],
  ['pk-1', 'packer'],
  ['en-1', 'engineer'],
];
const OPERATIONS = ['print', 'place', 'test', 'assembly', 'psu-test', 'repair'];

const PLANT = {
  site: { code: 'TVE', name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
  stations: [
    {
      code: 'L1-PRINT',
      line: 'L1',
      operation: 'print',
      slots: [{ name: 'stencil', holds: 'stencil' }],
    },
    {
      code: 'L1-PLACE',
      line: 'L1',
      operation: 'place',
      slots: [
        { name: '1-01', holds: 'reel' },
        { name: '1-02', holds: 'reel' },
      ],
    },
    {
      code: 'L2-PLACE',
      line: 'L2',
      operation: 'place',
      slots: [
        { name: '1-01', holds: 'reel' },
        { name: '1-02', holds: 'reel' },
      ],
    },
    { code: 'L1-TEST', line: 'L1', operation: 'test' },
    { code: 'ASSY-1', line: 'FINAL', operation: 'assembly' },
    { code: 'PSU-1', line: 'FINAL', operation: 'psu-test' },
    { code: 'REWORK-1', line: 'BOARD', operation: 'repair' },
    { code: 'QA-1', line: 'PACK', operation: 'sign-off' },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      serialPattern: '^WX4C[0-9]{7}$',
      route: [
        { step: 10, operation: 'print' },
        { step: 20, operation: 'place' },
        { step: 30, operation: 'test', attempts: 2 },
        { step: 40, operation: 'assembly' },
      ],
      bom: [
        ...['L1-PLACE', 'L2-PLACE'].flatMap((station) => [
          { part: 'C-100N', positions: ['C1', 'C2', 'C3'], station, slot: '1-01' },
          { part: 'R-10K', positions: ['R1', 'R2'], station, slot: '1-02' },
        ]),
        { part: 'J-TB8', positions: ['J1', 'J2'] },
        { product: 'PSU2', positions: ['A1'] },
      ],
    },
    {
      number: 'PSU2',
      revision: 'B',
      serialPattern: '^PSU2B[0-9]{7}$',
      route: [{ step: 10, operation: 'psu-test' }],
    },
  ],
  operators: PEOPLE.map(([badge]) => ({
    badge,
    name: `Person ${badge}`,
    operations: badge === 'op-new' ? [] : OPERATIONS,
  })),
};

const recordSchema = z.object({
  draws: z.array(z.looseObject({ item: z.string(), positions: z.array(z.string()) })),
  events: z.array(z.looseObject({ id: z.string(), type: z.string(), body: z.looseObject({}) })),
});
const resultsSchema = z.object({ results: z.array(z.looseObject({ outcome: z.string() })) });

/** A production server with a small plant whose slots are filled, a browser, and people with badges and PINs. */
export type Shift = Awaited<ReturnType<typeof openShift>>;

/** Starts a server of its own for a file of tests. */
export async function openShift() {
  const folder = makeTemporaryFolder();
  const token = randomBytes(16).toString('hex');
  const env = { REELKIN_DATA: folder.path, REELKIN_API_TOKEN: token };
  const [started, browser] = await Promise.all([startTestServer(env), launchBrowser()]);
  let server = started;
  const call = async (method: string, path: string, body?: object): Promise<unknown> => {
    const response = await fetch(server.origin + path, {
      method,
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    });
    expect(response.status, `${method} ${path}`).toBe(200);
    return response.json();
  };
  const say = eventMaker();
  const send = async (...events: WireEvent[]): Promise<void> => {
    const { results } = resultsSchema.parse(await call('POST', '/api/events', { events }));
    expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
  };
  await call('PUT', '/api/plant', PLANT);
  await addPeople(folder.path);
  await send(...filledSlots(say));
  return {
    origin: server.origin,
    dataFolder: folder.path,
    browser,
    /** SIGKILL to the server process, and the same server again on the same port and data. */
    kill: () => server.kill(),
    async revive(): Promise<void> {
      server = await startTestServer({ ...env, PORT: new URL(server.origin).port });
    },
    say,
    send,
    ...historiesOf(say),
    /** What the log has of a unit. */
    asBuilt: async (unit: string) =>
      recordSchema.parse(await call('GET', `/api/trace/as-built?unit=${encodeURIComponent(unit)}`)),
    /** A tablet at which somebody has signed in with badge and PIN, and that shows a screen. */
    tablet: (badge: string, path: string, options?: BrowserContextOptions) =>
      openTablet(browser, { origin: server.origin, badge, path, options: { ...TABLET, ...options } }),
    /** The same in another browser, one with a camera for example. */
    tabletIn: (other: Browser, badge: string, path: string, options?: BrowserContextOptions) =>
      openTablet(other, { origin: server.origin, badge, path, options: { ...TABLET, ...options } }),
    async close() {
      await browser.close();
      await server.stop();
      folder.remove();
    },
  };
}

async function addPeople(dataFolder: string): Promise<void> {
  const people = openPeopleDb(runningClusterUrl(dataFolder) ?? '');
  try {
    const pinHash = await hashSecret(PIN);
    for (const [badge, role] of PEOPLE)
      await insertAccount(people, { badge, role, pinHash, passwordHash: null });
  } finally {
    await people.$disconnect();
  }
}

type Say = ReturnType<typeof eventMaker>;

function filledSlots(say: Say): WireEvent[] {
  return [
    say.received({ item: 'ST-1', kind: 'stencil' }),
    say.received({ item: 'R-C', kind: 'reel', part: 'C-100N', lot: 'LOT-C', quantity: 5000 }),
    say.received({ item: 'R-R', kind: 'reel', part: 'R-10K', lot: 'LOT-R', quantity: 5000 }),
    say.received({ item: 'LOT-J', kind: 'lot', part: 'J-TB8', lot: 'B-1', quantity: 500 }),
    say.mounted('ST-1', 'L1-PRINT', 'stencil'),
    say.mounted('R-C', 'L1-PLACE', '1-01'),
    say.mounted('R-R', 'L1-PLACE', '1-02'),
  ];
}

function historiesOf(say: Say) {
  const stations = ['L1-PRINT', 'L1-PLACE', 'L1-TEST', 'ASSY-1'];
  /** A started unit that has passed the first stations of its route. */
  const unit = (serial: string, passedCount: number): WireEvent[] => [
    say.started({ unit: serial, product: 'WX4', revision: 'C' }),
    ...stations.slice(0, passedCount).map((station) => say.passed(serial, station)),
  ];
  return {
    unit,
    /** A unit that has passed everything and is signed. */
    finished: (serial: string): WireEvent[] => [...unit(serial, stations.length), say.signed(serial)],
  };
}

type TabletOptions = { origin: string; badge: string; path: string; options: BrowserContextOptions };

async function openTablet(browser: Browser, { origin, badge, path, options }: TabletOptions): Promise<Page> {
  const page = await (await browser.newContext(options)).newPage();
  await page.goto(origin + path);
  await signInWithPin(page, badge);
  return page;
}

/** Badge by scanner, PIN by the keys on the screen; afterwards the page that was asked for stands there. */
export async function signInWithPin(page: Page, badge: string): Promise<void> {
  await page.getByRole('form', { name: 'At a station' }).waitFor();
  await scan(page, badge);
  for (const digit of PIN) await page.getByRole('button', { name: `Digit ${digit}` }).click();
  await page.getByRole('button', { name: 'Sign in with PIN' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in');
}

/** Scans a code, wherever the focus is. */
export async function scan(page: Page, code: string): Promise<void> {
  await typeAsScanner(page, code);
}

/** Scans a code once more, when it no longer counts as the same scan. */
export async function scanAgain(page: Page, code: string): Promise<void> {
  await page.waitForTimeout(1000);
  await scan(page, code);
}

/** Chooses the station of a tablet and waits until it is ready. */
export async function chooseStation(page: Page, station: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${station}`) }).click();
  await page.getByText('Ready for the next unit.').waitFor();
}

/** The verdict that stands on the screen, by its word. */
export async function verdict(
  page: Page,
  word: 'GO' | 'STOP' | 'SCAN' | 'CHECK' | 'WAIT',
  text: string,
): Promise<void> {
  await page.getByRole('status').filter({ hasText: word }).filter({ hasText: text }).first().waitFor();
}

/** Whether the next scan would go into the scan box. */
export async function expectFocusInScanBox(page: Page): Promise<void> {
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('code');
}
