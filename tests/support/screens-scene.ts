import type { Browser, BrowserContextOptions, Page } from 'playwright';
import { expect } from 'vitest';
import { z } from 'zod';
import { launchBrowser } from '@/tests/support/browser';
import { SCENE_PLANT } from '@/tests/support/scene-history';
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
  const [server, browser] = await Promise.all([
    startTestServer({ REELKIN_DATA: folder.path, REELKIN_API_TOKEN: TOKEN }),
    launchBrowser(),
  ]);
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
  await call('PUT', '/api/plant', SCENE_PLANT);
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
