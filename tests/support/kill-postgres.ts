import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { clusterFolderOf, existingClusterHome } from '@/lib/data/embedded/cluster-home';

/** Ends the whole database server at once, as a power cut would; the running server starts it again. */
export function killPostgres(dataFolder: string): void {
  const home = existingClusterHome(dataFolder);
  if (home === null) throw new Error('The test server has no cluster.');
  const pid = Number(readFileSync(join(clusterFolderOf(home), 'postmaster.pid'), 'utf8').split('\n')[0]);
  process.kill(pid, 'SIGKILL');
}
