import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { acquireLock, lockHolder } from './folder-lock.mjs';
import { projectRoot } from './project-root.mjs';

const folder = join(projectRoot, '.reelkin', 'running');

/** Notes that a server of this checkout runs at `address`, until the returned function is called or it dies. */
export function registerServer(address) {
  for (const name of lockNames()) {
    const path = join(folder, name);
    if (lockHolder(path) === null) rmSync(path, { force: true });
  }
  const { lock } = acquireLock(join(folder, `${process.pid}.json`), { address });
  return () => lock?.release();
}

/** The living servers of this checkout, each with its `pid` and `address`, whatever data they serve. */
export function runningServers() {
  return lockNames()
    .map((name) => lockHolder(join(folder, name)))
    .filter((holder) => holder !== null);
}

function lockNames() {
  try {
    return readdirSync(folder).filter((name) => name.endsWith('.json'));
  } catch {
    return [];
  }
}
