import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { launchBrowser } from '../support/browser';
import { startTestServer, type TestServer } from '../support/start-test-server';
import { makeTemporaryFolder } from '../support/temporary-folder';

const folder = makeTemporaryFolder();
let server: TestServer;
let browser: Browser;
let desk: Page;

beforeAll(async () => {
  server = await startTestServer({ REELKIN_DATA: folder.path });
  browser = await launchBrowser();
  desk = await newPage();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  folder.remove();
});

async function newPage(): Promise<Page> {
  const context = await browser.newContext();
  return context.newPage();
}

async function signInAtStation(page: Page, pin: string): Promise<void> {
  await page.goto(`${server.origin}/sign-in?to=/not-permitted`);
  // A scanner types like a fast hand and ends with Enter, which must not send the form before there is a PIN.
  await page.keyboard.type('qa-7\n');
  for (const digit of pin) await page.getByRole('button', { name: `Digit ${digit}` }).click();
  await page.getByRole('button', { name: 'Sign in with PIN' }).click();
}

async function savePerson(title: string, fill: (dialog: ReturnType<Page['getByRole']>) => Promise<void>) {
  await desk.getByRole('button', { name: title }).click();
  const dialog = desk.getByRole('dialog');
  await fill(dialog);
  await dialog.getByRole('button', { name: /^(Add|Save)$/ }).click();
  return dialog;
}

test('the link of the first start makes the first administrator, once', async () => {
  const link = server.setupLink ?? '';
  await desk.goto(link);
  expect(await faultsSeenByAxe(desk)).toEqual([]);
  await desk.getByLabel('Badge').fill('boss-1');
  await desk.getByLabel('Name').fill('Ada Tarn');
  await desk.getByLabel('Password', { exact: true }).fill('too short');
  await desk.getByLabel('PIN', { exact: true }).fill('4711');
  await desk.getByRole('button', { name: 'Make administrator' }).click();
  await desk.getByText('A password has at least 12 characters.').waitFor();
  expect(await faultsSeenByAxe(desk)).toEqual([]);
  expect(await desk.getByLabel('Name').inputValue()).toBe('Ada Tarn');
  await desk.getByLabel('Password', { exact: true }).fill('correct horse battery');
  await desk.getByLabel('PIN', { exact: true }).fill('4711');
  await desk.getByRole('button', { name: 'Make administrator' }).click();
  await desk.getByRole('row', { name: /boss-1 Ada Tarn Administrator PIN and password Active/ }).waitFor();

  const late = await newPage();
  await late.goto(link);
  await late.getByRole('heading', { name: 'This link does not work' }).waitFor();
});

test('an administrator adds a person, who signs in with badge and PIN', async () => {
  const dialog = await savePerson('Add a person', async (form) => {
    await form.getByLabel('Badge').fill('qa-7');
    await form.getByLabel('Name').fill('Bea');
    await form.getByLabel('Role').selectOption('qa');
  });
  await dialog.getByText('A person needs a PIN, a password or both.').waitFor();
  expect(await faultsSeenByAxe(desk)).toEqual([]);
  await dialog.getByLabel('PIN', { exact: true }).fill('8520');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await desk.getByRole('row', { name: /qa-7 Bea QA PIN Active Never/ }).waitFor();
  await dialog.waitFor({ state: 'hidden' });
  expect(await faultsSeenByAxe(desk)).toEqual([]);

  const tablet = await newPage();
  await signInAtStation(tablet, '8521');
  await tablet.getByText('Badge and PIN or password do not go together.').waitFor();
  expect(await faultsSeenByAxe(tablet)).toEqual([]);
  await tablet.waitForFunction(() => document.activeElement?.getAttribute('name') === 'secret');
  await tablet.keyboard.type('8520\n');
  await tablet.getByText('You are signed in as qa-7, QA.').waitFor();
  expect(await faultsSeenByAxe(tablet)).toEqual([]);

  const cookies = await tablet.context().cookies();
  const cookie = cookies.find(({ name }) => name === 'reelkin_session');
  expect(cookie).toMatchObject({ name: 'reelkin_session', httpOnly: true, sameSite: 'Lax', secure: false });

  // A new PIN ends the session that there is.
  const change = await savePerson('Change qa-7', (form) => form.getByLabel('New PIN').fill('99887766'));
  await change.waitFor({ state: 'hidden' });
  await tablet.goto(`${server.origin}/not-permitted`);
  expect(new URL(tablet.url()).pathname).toBe('/sign-in');
  await signInAtStation(tablet, '99887766');
  await tablet.getByText('You are signed in as qa-7, QA.').waitFor();
  await tablet.getByRole('button', { name: 'Sign out' }).click();
  await tablet.waitForURL('**/sign-in');
  await tablet.goto(`${server.origin}/not-permitted`);
  expect(new URL(tablet.url()).pathname).toBe('/sign-in');
});

test('the only administrator cannot stop being one', async () => {
  const dialog = await savePerson('Change boss-1', async (form) => {
    await form.getByLabel('State').selectOption('closed');
  });
  await dialog.getByText('Nobody could manage people any more.').waitFor();
  await dialog.getByRole('button', { name: 'Cancel' }).click();
});
