import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync, renameSync, statSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { DatabaseProblem } from '@/lib/data/database-problem';
import type { ClusterAccount } from '@/lib/data/embedded/cluster-account';
import { postgresEnvironment } from '@/lib/data/embedded/create-cluster';

const logSizeMaxBytes = 10 * 1024 * 1024;
const readyPollMs = 50;
const stopLimitMs = 30_000;
const restartDelaysMs = [200, 500, 1000, 2000, 5000];

/** What a postmaster is started with; `settings` are server parameters by name. */
export type PostmasterOptions = {
  postgres: string;
  account: ClusterAccount;
  clusterFolder: string;
  logPath: string;
  port: number;
  settings: Record<string, string>;
  /** For tests: shares our terminal's Ctrl-C, and is not started again when it dies. */
  temporary: boolean;
  /** Connection string that must be answered before the postmaster counts as ready. */
  probeUrl: string;
  report: (line: string) => void;
};

/** A running PostgreSQL that is started again whenever it dies, until `stop`. */
export type Postmaster = { stop(): Promise<void> };

/** Starts PostgreSQL and waits until it answers; throws `DatabaseProblem` when it ends instead. */
export async function startPostmaster(options: PostmasterOptions): Promise<Postmaster> {
  let current = await launch(options);
  let stopping = false;

  const supervise = async (): Promise<void> => {
    while (!(stopping || options.temporary)) {
      const reason = await current.exited;
      if (stopping) return;
      options.report(`PostgreSQL ended unexpectedly (${reason}); starting it again`);
      current = (await relaunch(options, () => stopping)) ?? current;
    }
  };
  const supervision = supervise();

  return {
    async stop() {
      stopping = true;
      await endPostgres(current);
      await supervision;
      // Set when the supervisor was in the middle of starting it again.
      await endPostgres(current);
    },
  };
}

/** A PostgreSQL process; `exited` tells why it is gone, `logStart` where its part of the log begins, in bytes. */
type Launched = { child: ChildProcess; exited: Promise<string>; logStart: number };

async function relaunch(options: PostmasterOptions, isStopping: () => boolean): Promise<Launched | null> {
  for (let attempt = 0; ; attempt += 1) {
    await sleep(restartDelaysMs[Math.min(attempt, restartDelaysMs.length - 1)]);
    if (isStopping()) return null;
    try {
      const launched = await launch(options);
      options.report('PostgreSQL is running again');
      return launched;
    } catch (error) {
      options.report(error instanceof Error ? error.message : String(error));
    }
  }
}

async function launch(options: PostmasterOptions): Promise<Launched> {
  rotateLog(options.logPath);
  const log = openSync(options.logPath, 'a', 0o600);
  try {
    const logStart = statSync(options.logPath).size;
    const child = spawnPostgres(options, log);
    const exited = new Promise<string>((resolve) => {
      child.once('error', (error) => resolve(error.message));
      child.once('exit', (code, signal) => resolve(signal ?? `code ${code}`));
    });
    const launched = { child, exited, logStart };
    await waitUntilReady(launched, options);
    return launched;
  } finally {
    closeSync(log);
  }
}

function spawnPostgres(options: PostmasterOptions, log: number): ChildProcess {
  const parameters = Object.entries(options.settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  return spawn(options.postgres, ['-D', options.clusterFolder, '-p', String(options.port), ...parameters], {
    ...(options.account ?? {}),
    cwd: '/',
    env: postgresEnvironment,
    // In a session of its own: Ctrl-C must reach the server first, which ends its requests and then PostgreSQL.
    detached: !options.temporary,
    stdio: ['ignore', log, log],
  });
}

async function waitUntilReady(launched: Launched, options: PostmasterOptions): Promise<void> {
  const startedAt = performance.now();
  let failure: string | null = null;
  let reportedSeconds = 0;
  launched.exited.then((reason) => {
    failure = reason;
  });
  while (!(await answers(options.probeUrl))) {
    if (failure !== null) {
      const log = lastLogLines(options.logPath, launched.logStart);
      throw new DatabaseProblem(`The embedded PostgreSQL did not start (${failure}). ${log}`);
    }
    const seconds = Math.floor((performance.now() - startedAt) / 1000);
    if (seconds >= reportedSeconds + 5) {
      reportedSeconds = seconds;
      options.report(`Waiting for PostgreSQL, which may be recovering … ${seconds} s`);
    }
    await sleep(readyPollMs);
  }
}

async function answers(probeUrl: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: probeUrl, connectionTimeoutMillis: 2000 });
  client.on('error', () => {});
  try {
    await client.connect();
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => {});
  }
}

/** Fast shutdown: sessions end, everything is written down. After the limit, recovery at the next start does it. */
async function endPostgres({ child, exited }: Launched): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined) return;
  child.kill('SIGINT');
  const timer = setTimeout(() => child.kill('SIGQUIT'), stopLimitMs);
  await exited;
  clearTimeout(timer);
}

function rotateLog(path: string): void {
  const size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  if (size > logSizeMaxBytes) renameSync(path, `${path}.1`);
}

function lastLogLines(path: string, start: number): string {
  const lines = readFileSync(path).subarray(start).toString('utf8').trimEnd().split('\n');
  return lines.slice(-8).join('\n');
}
