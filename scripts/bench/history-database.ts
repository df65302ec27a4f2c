import pg from 'pg';
import type { EmbeddedCluster } from '@/lib/data/embedded-cluster';
import { migrate } from '@/lib/data/migrate';
import { rebuild } from '@/lib/data/rebuild';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { benchPlant } from '@/scripts/bench/line/bench-plant';
import { copyHistory, LOGGED_UNITS_MAX } from '@/scripts/bench/line/copy-history';
import { loadHistory } from '@/scripts/bench/line/load-history';
import { dropTextbook, loadTextbook } from '@/scripts/bench/models/textbook-model';

/** How long a history took to load, in seconds; one that was made by copying another has only that. */
export type Loaded =
  | { events: number; loadSeconds: number; rebuildSeconds: number; textbookSeconds: number }
  | { times: number; copySeconds: number };

/** Makes an empty, migrated database with the benchmark's plant; points the use cases at it. */
export async function openEmptyDatabase(cluster: EmbeddedCluster, name: string): Promise<string> {
  await closeDatabase();
  const admin = new pg.Client({ connectionString: cluster.adminUrl });
  await admin.connect();
  try {
    await admin.query(`drop database if exists ${name} with (force)`);
    await admin.query(`create database ${name} owner reelkin`);
  } finally {
    await admin.end();
  }
  const url = urlOf(cluster, name);
  await migrate(url, () => undefined);
  process.env.DATABASE_URL = url;
  await putPlant(benchPlant(), 'bench');
  return url;
}

/** Makes the database of so many units: the log through COPY, then the rebuild, then the textbook's tables. */
export async function loadHistoryDatabase(
  cluster: EmbeddedCluster,
  unitCount: number,
  report: (line: string) => void,
): Promise<{ url: string; loaded: Loaded }> {
  const url = await openEmptyDatabase(cluster, `bench_${unitCount}`);
  const [events, loadSeconds] = await timed(() => loadHistory(url, unitCount, report));
  report(`${events} events in the log after ${loadSeconds.toFixed(1)} s; rebuilding`);
  const [, rebuildSeconds] = await timed(() => rebuild(url, () => undefined));
  report(`rebuilt in ${rebuildSeconds.toFixed(1)} s, ${Math.round(events / rebuildSeconds)} events a second`);
  const [, textbookSeconds] = await timed(() => loadTextbook(url, unitCount));
  report(`textbook model in ${textbookSeconds.toFixed(1)} s`);
  return { url, loaded: { events, loadSeconds, rebuildSeconds, textbookSeconds } };
}

/** Makes the largest logged database so many times as large, without the textbook's tables. */
export async function copyHistoryDatabase(
  cluster: EmbeddedCluster,
  times: number,
  report: (line: string) => void,
): Promise<{ url: string; loaded: Loaded }> {
  const url = urlOf(cluster, `bench_${LOGGED_UNITS_MAX}`);
  await dropTextbook(url);
  const [, copySeconds] = await timed(() => copyHistory(url, times, report));
  report(`copied in ${copySeconds.toFixed(1)} s`);
  return { url, loaded: { times, copySeconds } };
}

/** Ends the use cases' connections. */
export async function closeDatabase(): Promise<void> {
  if (globalThis.reelkinDatabase === undefined) return;
  await database().end();
  globalThis.reelkinDatabase = undefined;
}

function urlOf(cluster: EmbeddedCluster, name: string): string {
  const url = new URL(cluster.url);
  url.pathname = `/${name}`;
  return url.href;
}

async function timed<T>(work: () => Promise<T>): Promise<[T, number]> {
  const begin = performance.now();
  const result = await work();
  return [result, (performance.now() - begin) / 1000];
}
