import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { appendEvents } from '@/lib/server/append-events';
import { openEmptyDatabase } from '@/scripts/bench/history-database';
import { lineEvents, rateOf, take } from '@/scripts/bench/measures/append-events';
import { countLines } from '@/scripts/bench/measures/stream-csv';
import { type Timing, timeEach } from '@/scripts/bench/report/percentiles';

const WARM = 3000;
const SINGLES = 1000;
const SHARED = 4000;
const CLIENTS = 50;
const POLL_MS = 20;
const TRIES_MAX = 50;

export type HttpReport = {
  append: Timing;
  useCase: Timing;
  empty: Timing;
  sharedRate: number;
  csv: { rows: number; rowsPerSecond: number; idleMiB: number; peakMiB: number };
};

type Server = {
  origin: string;
  pid: number;
  get: (path: string, accept?: string) => Promise<Response>;
  post: (events: readonly WireEvent[]) => Promise<void>;
};

/** The production server in a process of its own: appends one event a request, and streams the largest answer. */
export async function measureHttp(options: {
  cluster: Parameters<typeof openEmptyDatabase>[0];
  largestUrl: string;
  stencil: string;
}): Promise<HttpReport> {
  const { cluster, largestUrl, stencil } = options;
  const url = await openEmptyDatabase(cluster, 'bench_http');
  const source = lineEvents();
  for (let count = 0; count < WARM; count += 500) await appendEvents(take(source, 500), { kind: 'token' });
  const useCase = await timeEach(take(source, SINGLES), (event) => appendEvents([event], { kind: 'token' }));
  const appended = await withServer(url, async ({ get, post }) => {
    const empty = await timeEach(Array(SINGLES).fill('/api/health'), async (path) =>
      (await get(path)).text(),
    );
    const append = await timeEach(take(source, SINGLES), (event) => post([event]));
    const batches = take(source, SHARED).map((event) => [event]);
    return {
      empty,
      append,
      sharedRate: await rateOf(batches, CLIENTS, (events) => untilRecorded(events, post)),
    };
  });
  const csv = await withServer(largestUrl, (server) => streamCsv(server, stencil));
  return { ...appended, useCase, csv };
}

/** Requests of many clients overtake each other, and a unit's step may come before the one it needs: it is sent again. */
async function untilRecorded(events: readonly WireEvent[], post: Server['post']): Promise<void> {
  for (let tries = 1; ; tries += 1)
    try {
      return await post(events);
    } catch (error) {
      if (tries === TRIES_MAX) throw error;
    }
}

async function streamCsv(server: Server, item: string): Promise<HttpReport['csv']> {
  const path = `/api/trace/where-used?item=${encodeURIComponent(item)}`;
  // Once for what a server keeps for good, then at rest, then measured.
  await readRows(server, path);
  await new Promise((resolve) => setTimeout(resolve, 2000));
  const idleMiB = residentMiB(server.pid);
  let peakMiB = idleMiB;
  const poll = setInterval(() => {
    peakMiB = Math.max(peakMiB, residentMiB(server.pid));
  }, POLL_MS);
  const begin = performance.now();
  const rows = await readRows(server, path);
  const seconds = (performance.now() - begin) / 1000;
  clearInterval(poll);
  return { rows, rowsPerSecond: rows / seconds, idleMiB, peakMiB };
}

async function readRows(server: Server, path: string): Promise<number> {
  const answer = await server.get(path, 'text/csv');
  if (answer.status !== 200 || answer.body === null) throw new Error(`The CSV was refused: ${answer.status}`);
  let lines = 0;
  for await (const chunk of answer.body) lines += countLines(chunk);
  return lines - 1;
}

/** Memory of a process in MiB; only Linux tells. */
function residentMiB(pid: number): number {
  const match = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
  return Number(match?.[1] ?? Number.NaN) / 1024;
}

async function withServer<T>(url: string, work: (server: Server) => Promise<T>): Promise<T> {
  const token = randomBytes(24).toString('hex');
  const child = spawn(process.execPath, ['--import', 'tsx', 'scripts/serve.ts'], {
    env: { ...process.env, NODE_ENV: 'production', PORT: '0', DATABASE_URL: url, REELKIN_API_TOKEN: token },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const exited = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  try {
    const origin = await originOf(child);
    const headers = { authorization: `Bearer ${token}` };
    const get = (path: string, accept = 'application/json') =>
      fetch(`${origin}${path}`, { headers: { ...headers, accept } });
    const post = async (events: readonly WireEvent[]) => {
      const answer = await fetch(`${origin}/api/events`, {
        method: 'POST',
        headers: { ...headers, 'content-type': 'application/json' },
        body: JSON.stringify({ events }),
      });
      const text = await answer.text();
      if (answer.status !== 200 || !text.includes('"recorded"')) throw new Error(`Not recorded: ${text}`);
    };
    return await work({ origin, pid: child.pid ?? 0, get, post });
  } finally {
    child.kill('SIGTERM');
    await exited;
  }
}

async function originOf(child: ChildProcess): Promise<string> {
  let output = '';
  for await (const chunk of child.stdout ?? []) {
    output += String(chunk);
    const origin = /ready at (http:\S+)/.exec(output)?.[1];
    if (origin !== undefined) return origin;
  }
  throw new Error(`The server did not start:\n${output}`);
}
