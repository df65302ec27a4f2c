import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Browser, Page } from 'playwright';
import { type GestureFrames, measureGestures } from '@/scripts/bench/measures/genealogy-frames';
import { frameTable } from '@/scripts/bench/report/frame-table';
import { launchBrowser } from '@/tests/support/browser';
import { type GenealogySize, genealogyHistory, genealogyNodeCount } from '@/tests/support/genealogy-history';
import { startTestServer, type TestServer } from '@/tests/support/start-test-server';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

/** `npm run bench -- --genealogy`: how steadily frames come while the picture of over a thousand nodes is used. */
const SIZES: readonly GenealogySize[] = [
  { unit: 'SMALL', innerCount: 1, stationCount: 2, lotCount: 8 },
  { unit: 'LARGE', innerCount: 10, stationCount: 9, lotCount: 11 },
  { unit: 'WIDE', innerCount: 1, stationCount: 4, lotCount: 300 },
];
const THROTTLES = [1, 4];
const TABLET = { width: 1024, height: 768 };
const TOKEN = 'frames-token';
const LINK_TRIES = 300;
const PASSWORD = 'correct horse battery';

/** The frames of one picture at one slowness of the processor. */
export type FrameReport = { nodes: number; throttle: number; gestures: GestureFrames };

const { values } = parseArgs({
  strict: false,
  options: { out: { type: 'string', default: '.reelkin/bench/report' } },
});
const out = String(values.out);

const folder = makeTemporaryFolder();
const server = await startTestServer({ REELKIN_DATA: folder.path, REELKIN_API_TOKEN: TOKEN });
const browser = await launchBrowser();
try {
  for (const size of SIZES) await send(server, genealogyHistory(size, Date.now()));
  const page = await signedIn(browser, server);
  const reports: FrameReport[] = [];
  for (const throttle of THROTTLES)
    for (const size of SIZES) reports.push(await measure(page, size, throttle));
  mkdirSync(out, { recursive: true });
  writeFileSync(join(out, 'genealogy-frames.json'), `${JSON.stringify(reports)}\n`);
  console.log(frameTable(reports, browser.version()));
} finally {
  await browser.close();
  await server.stop();
  folder.remove();
}

async function measure(page: Page, size: GenealogySize, throttle: number): Promise<FrameReport> {
  const session = await page.context().newCDPSession(page);
  await page.goto(`${server.origin}/unit/${size.unit}/genealogy`);
  await page
    .getByRole('treeitem', { name: `Unit ${size.unit}` })
    .first()
    .waitFor();
  await session.send('Emulation.setCPUThrottlingRate', { rate: throttle });
  try {
    return { nodes: genealogyNodeCount(size), throttle, gestures: await measureGestures(page) };
  } finally {
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    await session.detach();
  }
}

async function send({ origin }: TestServer, events: readonly object[]): Promise<void> {
  const answer = await fetch(`${origin}/api/events`, {
    method: 'POST',
    headers: { authorization: `Bearer ${TOKEN}`, 'content-type': 'application/json' },
    body: JSON.stringify({ events }),
  });
  const text = await answer.text();
  if (answer.status !== 200 || text.includes('"refused"')) throw new Error(`Not recorded: ${text}`);
}

async function signedIn(inBrowser: Browser, started: TestServer): Promise<Page> {
  const page = await inBrowser.newPage({ viewport: TABLET, serviceWorkers: 'block' });
  await page.goto(await setupLinkOf(started));
  await page.getByLabel('Badge').fill('admin');
  await page.getByLabel('Name').fill('Ines Vale');
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByLabel('PIN', { exact: true }).fill('4711');
  await page.getByRole('button', { name: 'Make administrator' }).click();
  await page.waitForURL('**/people');
  return page;
}

/** On a busy machine the link comes later than a test would wait for it. */
async function setupLinkOf({ output }: TestServer): Promise<string> {
  for (let tries = 0; tries < LINK_TRIES; tries += 1) {
    const link = /first one here, once: (https?:\S+)/.exec(output())?.[1];
    if (link !== undefined) return link;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`The server gave no link for the first administrator:\n${output()}`);
}
