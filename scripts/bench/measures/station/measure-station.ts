import { randomBytes } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright';
import type { EmbeddedCluster } from '@/lib/data/embedded-cluster';
import { insertAccount } from '@/lib/data/people/insert-account';
import { openPeopleDb } from '@/lib/data/people/people-db';
import { rebuild } from '@/lib/data/rebuild';
import { REPLICA_UNITS_MAX } from '@/lib/domain/replica/replica-answer';
import { hashSecret } from '@/lib/server/people/secret-hash';
import { closeDatabase, openEmptyDatabase } from '@/scripts/bench/history-database';
import { unitCode } from '@/scripts/bench/line/bench-codes';
import { loadEvents } from '@/scripts/bench/line/load-history';
import { WAITED_STATION, waitingFloor } from '@/scripts/bench/line/waiting-floor';
import { inject, openTablet, SLOWER, scanAndSee, type Tablet } from '@/scripts/bench/measures/station/tablet';
import { type Timing, timingOf } from '@/scripts/bench/report/percentiles';
import { launchBrowser } from '@/tests/support/browser';
import { startTestServer } from '@/tests/support/start-test-server';

/** Units that wait at the station beyond those that a tablet keeps. */
const BEYOND = 1000;
const UNITS = REPLICA_UNITS_MAX + BEYOND;
const CHECKS = 1000;
const SCANS = 60;
/** With a network that swallows packets each scan may take seconds. */
const SCANS_SWALLOWED = 20;
const CONTACT_LIMIT_MS = 120_000;

/** Scans one after the other, each with a pass behind it: from the last key to the verdict on the screen. */
export type ScanTimes = { first: number; painted: Timing; inserted: Timing; waited: Timing };

/** Checks by the replica, beside a bare read of the unit and a request that does nothing, in the same page. */
type Checked = { firstCheck: number; check: Timing; bareRead: Timing; bareRequest: Timing };

/** A station's page, slowed `slower` times; milliseconds, and bytes. */
export type StationReport = {
  slower: number;
  firstLoadBytes: number;
  replica: {
    units: number;
    left: number;
    wholeAfter: number;
    answerBytes: number;
    diskBytes: number;
    heapBytes: number;
    blocked: { longest: number; total: number };
  };
  checked: Checked;
  scans: Record<string, ScanTimes>;
};

type Floor = { url: string; password: string };

/** A station at which more units wait than a tablet keeps, in a real browser on the production server. */
export async function measureStation(
  cluster: EmbeddedCluster,
  say: (line: string) => void,
): Promise<StationReport> {
  return measureFloor(await openFloor(cluster, say), say);
}

/** A database with the floor, and the operator's password; their account is the only one. */
async function openFloor(cluster: EmbeddedCluster, say: (line: string) => void): Promise<Floor> {
  const url = await openEmptyDatabase(cluster, 'bench_station');
  await loadEvents(url, waitingFloor(UNITS, Date.now() - 60_000), say);
  await rebuild(url, () => undefined);
  await closeDatabase();
  say(`${UNITS} units wait at ${WAITED_STATION}`);
  const password = randomBytes(12).toString('hex');
  await addOperator(url, password);
  return { url, password };
}

async function measureFloor({ url, password }: Floor, say: (line: string) => void): Promise<StationReport> {
  const env = { DATABASE_URL: url, REELKIN_API_TOKEN: randomBytes(24).toString('hex') };
  let server = await startTestServer(env);
  const browser = await launchBrowser();
  try {
    const { origin } = server;
    const tablet = await openTablet(browser, { origin, password, station: WAITED_STATION });
    await inject(tablet);
    const replica = await measureReplica(tablet, env, origin);
    say(`replica whole after ${Math.round(replica.wholeAfter)} ms: ${JSON.stringify(replica)}`);
    const checked = await timeChecks(tablet);
    say(`checks: ${JSON.stringify(checked)}`);
    const scans: StationReport['scans'] = {};
    const next = unitsFrom(REPLICA_UNITS_MAX - 1);
    const measure = async (name: string, count = SCANS) => {
      scans[name] = await timeScans(tablet, next, count);
      say(`${name}: ${JSON.stringify(scans[name])}`);
    };
    await measure('the server answers');
    await tablet.page.context().setOffline(true);
    await measure('the browser is offline');
    await tablet.page.context().setOffline(false);
    await untilSent(tablet);
    const thaw = server.freeze();
    await measure('the network swallows packets', SCANS_SWALLOWED);
    thaw();
    await untilSent(tablet);
    await server.kill();
    await measure('the server is dead');
    server = await startTestServer({ ...env, PORT: new URL(origin).port });
    await untilSent(tablet);
    const firstLoadBytes = await firstLoad(browser, tablet, origin);
    return { slower: SLOWER, firstLoadBytes, replica, checked, scans };
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function addOperator(url: string, password: string): Promise<void> {
  const people = openPeopleDb(url);
  try {
    const passwordHash = await hashSecret(password);
    await insertAccount(people, { badge: 'op-1', role: 'operator', pinHash: null, passwordHash });
  } finally {
    await people.$disconnect();
  }
}

/** Bytes of gzip JavaScript that a browser without a cache asks for until the station is ready. */
async function firstLoad(browser: Browser, { page }: Tablet, origin: string): Promise<number> {
  const storageState = await page.context().storageState();
  const cold = await browser.newContext({ storageState, serviceWorkers: 'block' });
  try {
    const fresh = await cold.newPage();
    const bodies: Promise<Buffer>[] = [];
    fresh.on('response', (response) => {
      if (response.url().endsWith('.js')) bodies.push(response.body());
    });
    await fresh.goto(`${origin}/station`, { timeout: 120_000 });
    await fresh.getByText('Ready for the next unit.').waitFor();
    return (await Promise.all(bodies)).reduce((sum, body) => sum + gzipSync(body).length, 0);
  } finally {
    await cold.close();
  }
}

async function measureReplica(
  tablet: Tablet,
  env: { REELKIN_API_TOKEN: string },
  origin: string,
): Promise<StationReport['replica']> {
  const { page, cdp } = tablet;
  const wholeAfter = await page.evaluate((station) => stationBench.untilWhole(station), WAITED_STATION);
  const blocks = await page.evaluate(() => stationBench.blocks());
  const { units, bytes: diskBytes } = await page.evaluate(() => stationBench.size());
  await cdp.send('HeapProfiler.collectGarbage');
  const { usedSize: heapBytes } = await cdp.send('Runtime.getHeapUsage');
  const answer = await fetch(`${origin}/api/replica?station=${WAITED_STATION}`, {
    headers: { authorization: `Bearer ${env.REELKIN_API_TOKEN}` },
  });
  const answerBytes = (await answer.arrayBuffer()).byteLength;
  const blocked = { longest: Math.max(0, ...blocks), total: blocks.reduce((sum, each) => sum + each, 0) };
  return { units, left: UNITS - units, wholeAfter, answerBytes, diskBytes, heapBytes, blocked };
}

async function timeChecks({ page }: Tablet): Promise<Checked> {
  const stride = Math.floor(REPLICA_UNITS_MAX / CHECKS);
  const units = Array.from({ length: CHECKS }, (_, index) => unitCode(BEYOND + index * stride));
  const [firstCheck = Number.NaN, ...durations] = await page.evaluate(
    ([station, codes]) => stationBench.timeChecks(station, codes, []),
    [WAITED_STATION, units] as const,
  );
  const reads = await page.evaluate(([station, codes]) => stationBench.timeReads(station, codes), [
    WAITED_STATION,
    units,
  ] as const);
  const requests = await page.evaluate((count) => stationBench.timeRequests(count), SCANS);
  return {
    firstCheck,
    check: timingOf(durations),
    bareRead: timingOf(reads),
    bareRequest: timingOf(requests),
  };
}

/** Codes of units that a tablet keeps, each once, far from each other. */
function* unitsFrom(last: number): Generator<string, never> {
  for (let index = last; ; index -= 97) yield unitCode(BEYOND + index);
}

async function timeScans(tablet: Tablet, units: Iterator<string, never>, count: number): Promise<ScanTimes> {
  const seen = [];
  for (let index = 0; index < count; index += 1) {
    const unit = units.next().value;
    const one = await scanAndSee(tablet, unit);
    if (one.word !== 'go') throw new Error(`${unit}: ${one.word}`);
    seen.push(one);
    await tablet.page.keyboard.press('F8');
    await tablet.page
      .getByText(new RegExp(`${unit}: Pass (recorded|kept)`))
      .waitFor({ timeout: CONTACT_LIMIT_MS });
  }
  const [first, ...later] = seen;
  return {
    first: first?.painted ?? Number.NaN,
    painted: timingOf(later.map(({ painted }) => painted)),
    inserted: timingOf(later.map(({ inserted }) => inserted)),
    waited: timingOf(later.map(({ waited }) => waited)),
  };
}

/** Until the server answers again and has everything. */
async function untilSent({ page }: Tablet): Promise<void> {
  await page.getByText('Server answers').waitFor({ timeout: CONTACT_LIMIT_MS });
  await page.getByText('nothing waits here').waitFor({ timeout: CONTACT_LIMIT_MS });
}
