import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

// A headless shell draws no window around its pages, which saves a quarter of the tests' time.
const systemBrowsers = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/**
 * Path of a Chromium that runs here, null when there is none: the one that CHROMIUM_PATH names, Playwright's own,
 * or the system's. A browser whose libraries are missing does not count.
 */
export async function findBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return runs(named) ? named : null;
  return [await playwrightBrowser(), ...systemBrowsers].find(runs) ?? null;
}

async function playwrightBrowser() {
  const { chromium } = await import('playwright');
  return chromium.executablePath();
}

function runs(path) {
  if (!existsSync(path)) return false;
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0;
}
