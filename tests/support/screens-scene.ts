import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright';
import { expect } from 'vitest';
import { z } from 'zod';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { formatInstant } from '@/lib/domain/time';
import { launchBrowser } from '@/tests/support/browser';
import { eventMaker } from '@/tests/support/event-maker';
import { startTestServer } from '@/tests/support/start-test-server';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

const resultsSchema = z.object({ results: z.array(z.looseObject({ outcome: z.string() })) });

const TOKEN = 'screens-token';
const PASSWORD = 'correct horse battery';

/** A production server with a small plant and its history, a browser, and people who can sign in. */
export type Scene = {
  origin: string;
  /** Signs in at a desk in a browser of one's own; `admin` is there from the start, others once they were added. */
  pageOf(badge: string, options?: BrowserContextOptions): Promise<Page>;
  /** Gives a badge an account, with the scene's password. */
  addPerson(badge: string, role: string): Promise<void>;
  /** Sends events as a machine does; every one must be recorded. */
  send(events: readonly object[]): Promise<void>;
  close(): Promise<void>;
};

/** Starts a server of its own and fills it with `events` on the scene's plant. */
export async function openScene(events: readonly object[]): Promise<Scene> {
  const folder = makeTemporaryFolder();
  const server = await startTestServer({ REELKIN_DATA: folder.path, REELKIN_API_TOKEN: TOKEN });
  const browser = await launchBrowser();
  const call = async (method: string, path: string, body: object): Promise<unknown> => {
    const response = await fetch(server.origin + path, {
      method,
      headers: { authorization: `Bearer ${TOKEN}`, 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    expect(response.status, `${method} ${path}`).toBe(200);
    return response.json();
  };
  const send = async (sent: readonly object[]): Promise<void> => {
    for (let from = 0; from < sent.length; from += 500) {
      const answer = await call('POST', '/api/events', { events: sent.slice(from, from + 500) });
      const { results } = resultsSchema.parse(answer);
      const refused = results.filter(({ outcome }) => outcome !== 'recorded');
      expect(refused).toEqual([]);
    }
  };
  await call('PUT', '/api/plant', PLANT);
  await send(events);
  const admin = await makeAdministrator(browser, server.setupLink ?? '');
  return {
    origin: server.origin,
    pageOf: (badge, options) => signIn(browser, { origin: server.origin, badge, options }),
    addPerson: (badge, role) => addPerson(admin, { badge, role }),
    send,
    async close() {
      await browser.close();
      await server.stop();
      folder.remove();
    },
  };
}

/** What axe finds on a page, as one line each; fails when axe looked at nothing. */
export async function faultsSeenByAxe(page: Page): Promise<string[]> {
  const { violations, passes } = await new AxeBuilder({ page }).analyze();
  expect(passes.length).toBeGreaterThan(10);
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

/** Types as a scanner does, wherever the focus is: fast, and with Enter at the end. */
export async function scan(page: Page, code: string): Promise<void> {
  await page.keyboard.type(`${code}\n`, { delay: 2 });
}

/** Units of the history, in the order of their making: `WX4C0000001` … */
export function serial(number: number): string {
  return `WX4C${String(number).padStart(7, '0')}`;
}

export const UNIT_COUNT = 120;
/** Units placed before the reel was changed, of which the last two may have met the second one. */
export const FIRST_REEL_COUNT = 110;

const PLANT = {
  site: { code: 'TVE', name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
  parts: [{ number: 'R-10K', description: 'Resistor 10 kΩ' }],
  stations: [
    { code: 'TEST-1', line: 'L1', operation: 'test' },
    { code: 'L1-PLACE', line: 'L1', operation: 'place', slots: [{ name: '1-01', holds: 'reel' }] },
    { code: 'L1-PRINT', line: 'L1', operation: 'print', slots: [{ name: 'stencil', holds: 'stencil' }] },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      serialPattern: '^WX4C[0-9]{7}$',
      route: [
        { step: 10, operation: 'print' },
        { step: 20, operation: 'place' },
        { step: 30, operation: 'test' },
      ],
      bom: [{ part: 'R-10K', positions: ['R1', 'R2'], station: 'L1-PLACE', slot: '1-01' }],
    },
  ],
  operators: [{ badge: 'op-1', name: 'Ada Fell', operations: ['print', 'place', 'test'] }],
};

/**
 * 120 units printed and placed up to now, two minutes apart; reel R-1 gave way to R-2 after 110 of them, give or take
 * three minutes. Ten are tested, signed, packed in CT-1 on pallet PAL-1 and shipped; one failed its test.
 */
export function sceneHistory(now = Date.now()): WireEvent[] {
  const make = eventMaker();
  const at = (minutesAgo: number) => ({ at: formatInstant((now - minutesAgo * 60_000) * 1000) });
  const placedAgo = (number: number) => 2 * (UNIT_COUNT - number) + 1;
  const who = { operator: 'op-1' };
  const placed = Array.from({ length: UNIT_COUNT }, (_, index) => {
    const [unit, ago] = [serial(index + 1), placedAgo(index + 1)];
    return [
      make.started({ unit, product: 'WX4', revision: 'C' }, { ...at(ago + 0.9), ...who }),
      make.passed(unit, 'L1-PRINT', { ...at(ago + 0.6), ...who }),
      make.passed(unit, 'L1-PLACE', { ...at(ago), ...who }),
    ];
  });
  const tested = Array.from({ length: 10 }, (_, index) => {
    const unit = serial(index + 1);
    return [
      make.passed(unit, 'TEST-1', { ...at(60), ...who }),
      make.make('unit.signed', { unit, meaning: 'released' }, at(50)),
      make.packed(unit, 'CT-1', at(40)),
    ];
  });
  const stencil = { station: 'L1-PRINT', ...at(500) };
  const first = { station: 'L1-PLACE', ...at(500) };
  const second = { station: 'L1-PLACE', ...at(placedAgo(FIRST_REEL_COUNT) - 1), uncertaintyMs: 180_000 };
  return [
    make.received({ item: 'ST-1', kind: 'stencil' }, at(600)),
    make.received({ item: 'R-1', kind: 'reel', part: 'R-10K', lot: 'L-7', quantity: 5000 }, at(600)),
    make.received({ item: 'R-2', kind: 'reel', part: 'R-10K', lot: 'L-8', quantity: 5000 }, at(600)),
    make.received({ item: 'L-7', kind: 'lot', part: 'R-10K' }, at(600)),
    make.make('item.mounted', { item: 'ST-1', slot: 'stencil' }, stencil),
    make.make('item.mounted', { item: 'R-1', slot: '1-01' }, first),
    ...placed.slice(0, FIRST_REEL_COUNT).flat(),
    make.make('item.mounted', { item: 'R-2', slot: '1-01' }, second),
    ...placed.slice(FIRST_REEL_COUNT).flat(),
    ...tested.flat(),
    make.failed(serial(11), 'TEST-1', { ...at(45), ...who }),
    make.nested('CT-1', 'PAL-1', at(38)),
    make.make(
      'container.shipped',
      { container: 'PAL-1', shipment: 'SH-1', customer: 'Northgate Rail' },
      at(30),
    ),
  ];
}

async function makeAdministrator(browser: Browser, link: string): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await page.goto(link);
  await page.getByLabel('Badge').fill('admin');
  await page.getByLabel('Name').fill('Ines Vale');
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByLabel('PIN', { exact: true }).fill('4711');
  await page.getByRole('button', { name: 'Make administrator' }).click();
  await page.waitForURL('**/people');
  return page;
}

async function addPerson(admin: Page, { badge, role }: { badge: string; role: string }): Promise<void> {
  await admin.getByRole('button', { name: 'Add a person' }).click();
  const dialog = admin.getByRole('dialog');
  await dialog.getByLabel('Badge').fill(badge);
  await dialog.getByLabel('Name').fill(badge);
  await dialog.getByLabel('Role').selectOption(role);
  await dialog.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await dialog.waitFor({ state: 'hidden' });
}

async function signIn(
  browser: Browser,
  who: { origin: string; badge: string; options?: BrowserContextOptions | undefined },
): Promise<Page> {
  const page = await (await browser.newContext(who.options)).newPage();
  await page.goto(`${who.origin}/sign-in`);
  const desk = page.getByRole('form', { name: 'At a desk' });
  await desk.getByLabel('Badge').fill(who.badge);
  await desk.getByLabel('Password').fill(PASSWORD);
  await desk.getByRole('button', { name: 'Sign in with password' }).click();
  await page.waitForURL('**/floor');
  return page;
}
