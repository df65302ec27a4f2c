import pg from 'pg';
import { z } from 'zod';
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

/** A database with a history, and how that came there. */
export type HistoryDatabase = { url: string; units: number; loaded: Loaded };

/** Makes an empty, migrated database with the benchmark's plant; points the use cases at it. */
export async function openEmptyDatabase(cluster: EmbeddedCluster, name: string): Promise<string> {
  await closeDatabase();
  await withClient(cluster.adminUrl, async (admin) => {
    await admin.query(`drop database if exists ${name} with (force)`);
    await admin.query(`create database ${name} owner reelkin`);
  });
  const url = urlOf(cluster, name);
  await migrate(url, () => undefined);
  await pointAt(url);
  await putPlant(benchPlant(), 'bench');
  return url;
}

/** Makes the database of so many units: the log through COPY, then the rebuild, then the textbook's tables. */
export async function loadHistoryDatabase(
  cluster: EmbeddedCluster,
  units: number,
  report: (line: string) => void,
): Promise<HistoryDatabase> {
  const url = await openEmptyDatabase(cluster, `bench_${units}`);
  const [events, loadSeconds] = await timed(() => loadHistory(url, units, report));
  report(`${events} events in the log after ${loadSeconds.toFixed(1)} s; rebuilding`);
  const [, rebuildSeconds] = await timed(() => rebuild(url, () => undefined));
  report(`rebuilt in ${rebuildSeconds.toFixed(1)} s, ${Math.round(events / rebuildSeconds)} events a second`);
  const [, textbookSeconds] = await timed(() => loadTextbook(url, units));
  report(`textbook model in ${textbookSeconds.toFixed(1)} s`);
  return noteLoaded({ url, units, loaded: { events, loadSeconds, rebuildSeconds, textbookSeconds } });
}

/** Makes the largest logged database so many times as large, without the textbook's tables. */
export async function copyHistoryDatabase(
  cluster: EmbeddedCluster,
  times: number,
  report: (line: string) => void,
): Promise<HistoryDatabase> {
  const url = urlOf(cluster, `bench_${LOGGED_UNITS_MAX}`);
  await dropTextbook(url);
  const [, copySeconds] = await timed(() => copyHistory(url, times, report));
  report(`copied in ${copySeconds.toFixed(1)} s`);
  return noteLoaded({ url, units: times * LOGGED_UNITS_MAX, loaded: { times, copySeconds } });
}

/** The databases that an earlier run has made, the smallest first. */
export async function findHistoryDatabases(cluster: EmbeddedCluster): Promise<HistoryDatabase[]> {
  const names = await withClient(cluster.adminUrl, (client) =>
    client.query(`select datname as name from pg_database where datname ~ '^bench_[0-9]+$'`),
  );
  const found: HistoryDatabase[] = [];
  for (const row of names.rows) {
    const url = urlOf(cluster, nameSchema.parse(row).name);
    const { rows } = await withClient(url, (client) =>
      client.query('select units, loaded from bench.loaded'),
    );
    found.push({ url, ...notedSchema.parse(rows[0]) });
  }
  return found.sort((a, b) => a.units - b.units);
}

/** Points the use cases at a database. */
export async function pointAt(url: string): Promise<void> {
  await closeDatabase();
  process.env.DATABASE_URL = url;
}

const nameSchema = z.object({ name: z.string() });
const notedSchema = z.object({
  units: z.coerce.number(),
  loaded: z.union([
    z.object({
      events: z.number(),
      loadSeconds: z.number(),
      rebuildSeconds: z.number(),
      textbookSeconds: z.number(),
    }),
    z.object({ times: z.number(), copySeconds: z.number() }),
  ]),
});

async function noteLoaded(history: HistoryDatabase): Promise<HistoryDatabase> {
  await withClient(history.url, async (client) => {
    await client.query('create schema if not exists bench');
    await client.query('drop table if exists bench.loaded');
    await client.query('create table bench.loaded as select $1::bigint as units, $2::jsonb as loaded', [
      history.units,
      JSON.stringify(history.loaded),
    ]);
  });
  return history;
}

async function withClient<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
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
