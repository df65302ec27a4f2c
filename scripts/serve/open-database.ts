import { mkdirSync } from 'node:fs';
import { startEmbeddedCluster } from '@/lib/data/embedded-cluster';
import { describeHolder, serverLockPath } from '../bootstrap/find-conflict.mjs';
import { acquireLock } from '../bootstrap/folder-lock.mjs';
import { StartProblem } from './start-problem';

/** A database to work with: `url` connects as its owner, `announce` tells later starts where we answer. */
export type OpenDatabase = { url: string; announce(address: string): void; close(): Promise<void> };

/** The PostgreSQL that `DATABASE_URL` names, or else the embedded one, whose data folder it takes for itself. */
export async function openDatabase(options: {
  databaseUrl: string | null;
  dataFolder: string;
  report: (line: string) => void;
}): Promise<OpenDatabase> {
  const { databaseUrl, dataFolder, report } = options;
  if (databaseUrl !== null) return { url: databaseUrl, announce() {}, async close() {} };
  mkdirSync(dataFolder, { recursive: true });
  const { lock, holder } = acquireLock(serverLockPath(dataFolder));
  if (lock === null) throw new StartProblem(describeHolder(holder, dataFolder));
  try {
    const cluster = await startEmbeddedCluster({ dataFolder, report });
    return {
      url: cluster.url,
      announce: (address) => lock.update({ address }),
      async close() {
        await cluster.stop();
        lock.release();
      },
    };
  } catch (error) {
    lock.release();
    throw error;
  }
}
