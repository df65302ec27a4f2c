import { type Browser, chromium, type LaunchOptions } from 'playwright';
import { findBrowser } from '../../scripts/bootstrap/find-browser.mjs';

/** A browser that asks the network for nothing of its own, and also runs as root in a container. */
const quietFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-dev-shm-usage',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Launches the Chromium that is there; `args` are flags of its own, such as a file in place of a camera. */
export async function launchBrowser({ args = [], ...options }: LaunchOptions = {}): Promise<Browser> {
  const found = await browserOptions();
  return chromium.launch({ ...options, ...found, args: [...found.args, ...args] });
}

/** Which Chromium to launch, and how. */
export async function browserOptions(): Promise<{ executablePath: string; args: string[] }> {
  const executablePath = await findBrowser();
  if (executablePath === null) throw new Error('No Chromium was found: npm test says how to get one.');
  return { executablePath, args: quietFlags };
}
