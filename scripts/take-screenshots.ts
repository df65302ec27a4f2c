import { mkdirSync } from 'node:fs';
import { chromium, type Page } from 'playwright';
import { findBrowser } from '@/scripts/bootstrap/find-browser.mjs';
import { DEMO_PEOPLE } from '@/scripts/demo/people';
import { CRACKED_REEL } from '@/scripts/demo/stories';

const FOLDER = 'public/walk';
const RETURNED_UNIT = 'WX4C0005037';
const DESKTOP = { width: 1440, height: 900 };

/** Takes the README's pictures from a running demo: `npm run screenshots -- http://127.0.0.1:3000`. */
async function takeScreenshots(origin: string): Promise<void> {
  const executablePath = await findBrowser();
  if (executablePath === null) throw new Error('No Chromium was found: npm test says how to get one.');
  mkdirSync(FOLDER, { recursive: true });
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const page = await browser.newPage({ viewport: DESKTOP, colorScheme: 'light' });
    await signIn(page, origin);
    await picture(page, `${origin}/unit/${RETURNED_UNIT}`, '1-unit');
    await page.getByText(CRACKED_REEL.reel).first().scrollIntoViewIfNeeded();
    await page.screenshot({ path: `${FOLDER}/2-as-built.png` });
    await picture(page, `${origin}/trace?item=${CRACKED_REEL.reel}`, '3-where-used');
    await picture(page, `${origin}/item/${CRACKED_REEL.reel}`, '4-item');
    await holdTheLot(page, origin);
    await picture(page, `${origin}/floor`, 'floor');
  } finally {
    await browser.close();
  }
}

async function signIn(page: Page, origin: string): Promise<void> {
  const engineer = DEMO_PEOPLE.find(({ role }) => role === 'engineer');
  if (engineer === undefined || engineer.password === null)
    throw new Error('The demo has no engineer with a password.');
  await page.goto(`${origin}/sign-in`);
  const form = page.getByRole('form', { name: 'At a desk' });
  await form.getByLabel('Badge').fill(engineer.badge);
  await form.getByLabel('Password', { exact: true }).fill(engineer.password);
  await form.getByRole('button', { name: 'Sign in with password' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in');
}

/** The last step of the walk: it changes the demo, which is why a fresh one is best. */
async function holdTheLot(page: Page, origin: string): Promise<void> {
  await page.goto(`${origin}/lot/${CRACKED_REEL.lot}`, { waitUntil: 'networkidle' });
  await page.getByRole('button', { name: 'Place hold' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('textbox').fill('Cracked capacitors at C14: no unit may draw from this lot.');
  await dialog.getByRole('button', { name: 'Place hold' }).click();
  await dialog.waitFor({ state: 'hidden' });
  await picture(page, `${origin}/lot/${CRACKED_REEL.lot}`, '5-hold');
}

async function picture(page: Page, address: string, name: string): Promise<void> {
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.screenshot({ path: `${FOLDER}/${name}.png` });
  console.log(`${FOLDER}/${name}.png`);
}

await takeScreenshots(process.argv[2] ?? 'http://127.0.0.1:3000');
