import { startEmbeddedCluster } from '@/lib/data/embedded-cluster';
import { makeTemporaryFolder } from './temporary-folder';

/**
 * A PostgreSQL server for tests, as a user who may create databases: the one that TEST_DATABASE_URL or
 * DATABASE_URL names, or else an embedded one that forgets everything at `close`.
 */
export async function openDatabaseServer(): Promise<{ ownerUrl: string; close: () => Promise<void> }> {
  const given = [process.env.TEST_DATABASE_URL, process.env.DATABASE_URL].find(
    (url) => url !== undefined && url !== '',
  );
  if (given !== undefined) return { ownerUrl: given, async close() {} };
  const folder = makeTemporaryFolder();
  const cluster = await startEmbeddedCluster({
    dataFolder: folder.path,
    report: (line) => console.log(line),
    temporary: true,
  });
  return {
    ownerUrl: cluster.url,
    async close() {
      await cluster.stop();
      folder.remove();
    },
  };
}
