import { setTimeout as sleep } from 'node:timers/promises';
import { build } from 'esbuild';
import type { Browser, CDPSession, Page } from 'playwright';
import type { Seen } from '@/scripts/bench/measures/station/in-page';

/** How many times slower than this machine the page computes; workers and the browser itself are not slowed. */
export const SLOWER = 6;
const KEY_EACH_MS = 5;
const VERDICT_LIMIT_MS = 30_000;

/** A station's page in a browser, slowed, with what the benchmark runs in it. */
export type Tablet = { page: Page; cdp: CDPSession };

/** Signs in and chooses the station, then slows the page and opens it anew. */
export async function openTablet(
  browser: Browser,
  { origin, password, station }: { origin: string; password: string; station: string },
): Promise<Tablet> {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  await context.addInitScript((code) => {
    localStorage.setItem('reelkin.station', code);
  }, station);
  const page = await context.newPage();
  await page.goto(`${origin}/sign-in`);
  const form = page.getByRole('form', { name: 'At a desk' });
  await form.getByLabel('Badge').fill('op-1');
  await form.getByLabel('Password', { exact: true }).fill(password);
  await form.getByRole('button', { name: 'Sign in with password' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in', { timeout: 120_000 });
  const cdp = await context.newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  await page.goto(`${origin}/station`, { waitUntil: 'commit', timeout: 120_000 });
  await page.getByText('Ready for the next unit.').waitFor({ timeout: 180_000 });
  return { page, cdp };
}

/** Brings `in-page.ts` into the page; once after each load. */
export async function inject({ page }: Tablet): Promise<void> {
  const { outputFiles } = await build({
    entryPoints: ['scripts/bench/measures/station/in-page.ts'],
    bundle: true,
    write: false,
    minify: true,
    format: 'iife',
    target: 'es2022',
    define: { 'process.env.NODE_ENV': '"production"' },
    // As in the page itself, whose policy lets no code be made of text; what a debugger runs is told otherwise.
    banner: { js: 'globalThis.__zod_globalConfig = { jitless: true };' },
  });
  await page.evaluate(outputFiles[0]?.text ?? '');
}

/** Types a code as a scanner does, without waiting for the page, and waits for its verdict. */
export async function scanAndSee({ page, cdp }: Tablet, unit: string): Promise<Seen> {
  const watch = await page.evaluateHandle((code) => stationBench.watch(code), unit);
  const sent: Promise<unknown>[] = [];
  for (const character of unit) {
    sent.push(...strike(cdp, { key: character, text: character }));
    await sleep(KEY_EACH_MS);
  }
  sent.push(...strike(cdp, { key: 'Enter', text: '\r' }));
  const late = sleep(VERDICT_LIMIT_MS).then(() => {
    throw new Error(`No verdict about ${unit} within ${VERDICT_LIMIT_MS / 1000} s.`);
  });
  const [seen] = await Promise.race([Promise.all([watch.evaluate(({ seen }) => seen), ...sent]), late]);
  await watch.dispose();
  return seen;
}

function strike(cdp: CDPSession, { key, text }: { key: string; text: string }): Promise<unknown>[] {
  const windowsVirtualKeyCode = key === 'Enter' ? 13 : key.charCodeAt(0);
  return [
    cdp.send('Input.dispatchKeyEvent', { type: 'keyDown', key, text, windowsVirtualKeyCode }),
    cdp.send('Input.dispatchKeyEvent', { type: 'keyUp', key, windowsVirtualKeyCode }),
  ];
}
