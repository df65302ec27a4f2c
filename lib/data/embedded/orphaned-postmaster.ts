import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readlinkSync, realpathSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { DatabaseProblem } from '@/lib/data/database-problem';

const stopLimitMs = 30_000;
const pollMs = 50;

/**
 * Stops a PostgreSQL that outlived the server which started it, the clean way, so that the next one finds a
 * folder of its own. Also removes a stale `postmaster.pid` whose process id now belongs to another program,
 * because PostgreSQL would refuse to start beside it. The caller must hold the data folder's lock.
 */
export async function stopOrphanedPostmaster(
  clusterFolder: string,
  report: (line: string) => void,
): Promise<void> {
  const pid = readPostmasterPid(clusterFolder);
  if (pid === null) return;
  if (isPostmasterOf(pid, clusterFolder)) {
    report(`Stopping the PostgreSQL left over from an earlier run (process ${pid})`);
    await stopProcess(pid, clusterFolder);
  }
  rmSync(join(clusterFolder, 'postmaster.pid'), { force: true });
}

async function stopProcess(pid: number, clusterFolder: string): Promise<void> {
  // SIGINT ends sessions and writes everything down; SIGQUIT leaves the rest to recovery at the next start.
  for (const signal of ['SIGINT', 'SIGQUIT'] as const) {
    sendSignal(pid, signal);
    const deadline = performance.now() + stopLimitMs;
    while (performance.now() < deadline) {
      if (!isPostmasterOf(pid, clusterFolder)) return;
      await sleep(pollMs);
    }
  }
  throw new DatabaseProblem(
    `The PostgreSQL left over from an earlier run (process ${pid}) does not stop. Stop it by hand and start again.`,
  );
}

function sendSignal(pid: number, signal: NodeJS.Signals): void {
  try {
    process.kill(pid, signal);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ESRCH') return;
    throw new DatabaseProblem(
      `The PostgreSQL left over from an earlier run (process ${pid}) belongs to another user. Stop it as that user.`,
    );
  }
}

function readPostmasterPid(clusterFolder: string): number | null {
  const path = join(clusterFolder, 'postmaster.pid');
  if (!existsSync(path)) return null;
  const pid = Number.parseInt(readFileSync(path, 'utf8'), 10);
  return Number.isInteger(pid) && pid > 0 ? pid : null;
}

/** A postmaster works in its data directory, which tells it from a program that was given its old id. */
function isPostmasterOf(pid: number, clusterFolder: string): boolean {
  if (process.platform === 'linux') {
    try {
      return readlinkSync(`/proc/${pid}/cwd`) === realpathSync(clusterFolder);
    } catch {
      return false;
    }
  }
  const ps = spawnSync('ps', ['-o', 'args=', '-p', String(pid)], { encoding: 'utf8' });
  return ps.status === 0 && ps.stdout.includes(clusterFolder);
}
