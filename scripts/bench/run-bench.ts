import { mkdirSync, writeFileSync } from 'node:fs';
import { arch, cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { type EmbeddedCluster, startEmbeddedCluster } from '@/lib/data/embedded-cluster';
import { openPool, SESSION_SETTINGS } from '@/lib/data/pool';
import { type BenchOptions, readOptions, sizesUpTo } from '@/scripts/bench/bench-options';
import {
  closeDatabase,
  copyHistoryDatabase,
  findHistoryDatabases,
  type HistoryDatabase,
  loadHistoryDatabase,
  openEmptyDatabase,
  pointAt,
} from '@/scripts/bench/history-database';
import { toolCode } from '@/scripts/bench/line/bench-codes';
import { TOOL_SLOTS } from '@/scripts/bench/line/bench-plant';
import { copiedCode, LOGGED_UNITS_MAX } from '@/scripts/bench/line/copy-history';
import { measureAppend } from '@/scripts/bench/measures/append-events';
import { measureAsBuilt } from '@/scripts/bench/measures/as-built';
import { measureHttp } from '@/scripts/bench/measures/http';
import { measureLateMount } from '@/scripts/bench/measures/late-mount';
import { measureStation } from '@/scripts/bench/measures/station/measure-station';
import { measureStorage } from '@/scripts/bench/measures/storage';
import { measureCsv } from '@/scripts/bench/measures/stream-csv';
import { compareCopies, measureWhereUsed, usedReels } from '@/scripts/bench/measures/where-used';
import { openDuckModel } from '@/scripts/bench/models/duckdb-model';
import { GRAPH_UNITS_MAX, openGraphModel } from '@/scripts/bench/models/graph-model';
import type { BenchReport, SizeReport } from '@/scripts/bench/report/bench-report';
import { drawCharts } from '@/scripts/bench/report/draw-charts';
import { stationRows } from '@/scripts/bench/report/station-rows';
import { markdownTable, tableOf } from '@/scripts/bench/report/table';

/** DuckDB keeps its copy in memory: beyond this many units it would not fit beside PostgreSQL. */
const DUCK_UNITS_MAX = 200_000;

const REELS_ASKED = 200;

/** The first stencil: it touched the first 50,000 units. */
const STENCIL = toolCode(TOOL_SLOTS[0], 0);

const options = readOptions(process.argv.slice(2));
const say = (line: string) => console.log(`${new Date().toISOString().slice(11, 19)}  ${line}`);

process.exitCode = await run(options);
process.exit();

async function run({ units, out, data, http, station, again }: BenchOptions): Promise<number> {
  mkdirSync(data, { recursive: true });
  mkdirSync(out, { recursive: true });
  const cluster = await startEmbeddedCluster({ dataFolder: data, report: say });
  try {
    if (station) {
      console.log(`\n${markdownTable(stationRows(await measureStation(cluster, say)))}`);
      return 0;
    }
    const append = await measureAppend(await openEmptyDatabase(cluster, 'bench_append'));
    for (const { name, reelkin, bare } of append)
      say(`append, ${name}: ${(reelkin / bare).toFixed(2)} of a bare INSERT`);
    const report: BenchReport = {
      at: new Date().toISOString(),
      machine: await describeMachine(cluster.url),
      append,
      sizes: [],
      http: null,
    };
    let largestUrl = cluster.url;
    for await (const history of again ? await findHistoryDatabases(cluster) : loadAll(cluster, units)) {
      say(`${history.units} units: measuring`);
      report.sizes.push(await measureSize(history, data));
      largestUrl = history.url;
      // A larger size may take hours: what is measured is not lost with it.
      writeReport(report, out);
    }
    if (http) report.http = await measureHttp({ cluster, largestUrl, stencil: STENCIL });
    writeReport(report, out);
    console.log(`\n${tableOf(report)}\nWritten to ${out}`);
    return 0;
  } finally {
    await closeDatabase();
    await cluster.stop();
  }
}

/** The databases of all sizes up to the one that was asked for, each made when the one before it is measured. */
async function* loadAll(cluster: EmbeddedCluster, units: number): AsyncGenerator<HistoryDatabase> {
  for (const size of sizesUpTo(units)) {
    say(`${size} units`);
    yield size <= LOGGED_UNITS_MAX
      ? await loadHistoryDatabase(cluster, size, say)
      : await copyHistoryDatabase(cluster, size / LOGGED_UNITS_MAX, say);
  }
}

function writeReport(report: BenchReport, out: string): void {
  writeFileSync(join(out, 'bench.json'), `${JSON.stringify(report, null, 2)}\n`);
  for (const [name, svg] of drawCharts(report)) writeFileSync(join(out, name), svg);
}

async function measureSize({ url, units, loaded }: HistoryDatabase, folder: string): Promise<SizeReport> {
  await pointAt(url);
  const logged = Math.min(units, LOGGED_UNITS_MAX);
  const copies = Math.ceil(units / LOGGED_UNITS_MAX);
  const hasTextbook = copies === 1;
  const reels = usedReels(logged, REELS_ASKED).map((reel, index) => copiedCode(reel, index % copies));
  const pool = openPool({ url, use: 'reading' });
  const owner = new pg.Client({ connectionString: url, options: SESSION_SETTINGS.join(' ') });
  await owner.connect();
  try {
    await owner.query('vacuum (analyze)');
    const duck = hasTextbook && units <= DUCK_UNITS_MAX ? await openDuckModel(owner, folder) : null;
    const graph = units <= GRAPH_UNITS_MAX ? await openGraphModel(owner, units) : null;
    if (copies > 1) await compareCopies(usedReels(logged, REELS_ASKED), copies);
    const whereUsed = await measureWhereUsed(owner, reels, { hasTextbook, duck, graph });
    duck?.close();
    say('where-used measured, all models answer the same');
    const asBuilt = await measureAsBuilt(pool, logged, hasTextbook);
    const storage = await measureStorage(owner, units, hasTextbook);
    await measureCsv(STENCIL);
    const csv = await measureCsv(STENCIL);
    const lateMounts = [];
    for (const number of [10, 40, 70]) lateMounts.push(await measureLateMount(owner, units, number));
    say('measured');
    return { units, loaded, whereUsed, asBuilt, storage, csv, lateMounts };
  } finally {
    await owner.end();
    await pool.end();
  }
}

async function describeMachine(url: string): Promise<Record<string, string>> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query(
      `select current_setting('server_version') as postgres, current_setting('fsync') as fsync,
         current_setting('synchronous_commit') as synchronous_commit, current_setting('shared_buffers') as shared_buffers`,
    );
    return {
      processor: `${cpus()[0]?.model ?? 'unknown'}, ${cpus().length} cores, ${arch()}`,
      memory: `${Math.round(totalmem() / 2 ** 30)} GiB`,
      node: process.version,
      ...rows[0],
    };
  } finally {
    await client.end();
  }
}
