import { randomUUID } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseProblem } from '@/lib/data/database-problem';
import { canEnter, chooseClusterAccount } from '@/lib/data/embedded/cluster-account';

/** Where root keeps clusters and programs that PostgreSQL's own user could not reach in their usual place. */
export const outsideFolder = '/var/lib/reelkin';

/** File in the data folder that names the home of its cluster when that is elsewhere. */
const locationFile = 'database-location';
/** File in an outside home that names the data folder it belongs to. */
const ownerFile = 'data-folder';

/**
 * The folder that holds `postgres/` (the cluster), its settings and its log: the data folder itself, or one under
 * `/var/lib/reelkin` when we are root and PostgreSQL's user cannot enter the data folder (a checkout under /root).
 */
export function findClusterHome(dataFolder: string): string {
  mkdirSync(dataFolder, { recursive: true });
  const recorded = recordedHome(dataFolder);
  if (recorded !== null) return recorded;
  const inside = clusterFolderOf(dataFolder);
  if (existsSync(inside) || canEnter(chooseClusterAccount(inside), dataFolder)) return dataFolder;
  return makeOutsideHome(dataFolder);
}

/** The home recorded for this data folder, without making one: null when no cluster was ever put there. */
export function existingClusterHome(dataFolder: string): string | null {
  const home = recordedHome(dataFolder) ?? dataFolder;
  return existsSync(clusterFolderOf(home)) ? home : null;
}

/** PostgreSQL's own data directory in a home. */
export function clusterFolderOf(home: string): string {
  return join(home, 'postgres');
}

function recordedHome(dataFolder: string): string | null {
  const path = join(dataFolder, locationFile);
  if (!existsSync(path)) return null;
  const home = readFileSync(path, 'utf8').trim();
  if (!existsSync(home)) {
    throw new DatabaseProblem(
      `The database of ${dataFolder} should be in ${home}, which does not exist. Bring it back, or remove ${path} to begin with an empty plant.`,
    );
  }
  refuseCopiedFolder(dataFolder, home, path);
  return home;
}

/** A data folder that was copied still names the original's cluster: two servers must not take it for theirs. */
function refuseCopiedFolder(dataFolder: string, home: string, path: string): void {
  const owner = readFileSync(join(home, ownerFile), 'utf8').trim();
  const self = realpathSync(dataFolder);
  if (owner === self) return;
  if (existsSync(join(owner, locationFile))) {
    throw new DatabaseProblem(
      `${dataFolder} is a copy of ${owner}, and the database in ${home} belongs to that one. Remove ${path} to begin with an empty plant here.`,
    );
  }
  writeFileSync(join(home, ownerFile), `${self}\n`);
}

function makeOutsideHome(dataFolder: string): string {
  const home = join(outsideFolder, randomUUID());
  mkdirSync(home, { recursive: true });
  for (const folder of [outsideFolder, home]) chmodSync(folder, 0o755);
  writeFileSync(join(home, ownerFile), `${realpathSync(dataFolder)}\n`);
  writeFileSync(join(dataFolder, locationFile), `${home}\n`);
  return home;
}
