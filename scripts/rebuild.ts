import { runningClusterUrl } from '@/lib/data/embedded-cluster';
import { migrate } from '@/lib/data/migrate';
import { rebuild } from '@/lib/data/rebuild';
import { runningServerOf } from './bootstrap/find-conflict.mjs';
import { checkedEnv } from './serve/checked-env';
import { type OpenDatabase, openDatabase } from './serve/open-database';
import { explain } from './serve/start-problem';

const report = (line: string): void => console.log(line);

process.exitCode = await run();
process.exit();

/** Makes the read tables again from the log, beside a running server or without one; resolves with the exit code. */
async function run(): Promise<number> {
  let database: OpenDatabase | null = null;
  try {
    database = await findDatabase();
    await migrate(database.url, report);
    await rebuild(database.url, report);
    report('The read tables were made again from the event log.');
    return 0;
  } catch (error) {
    console.error(explain(error));
    return 1;
  } finally {
    await database?.close();
  }
}

/** A running server has the embedded cluster already: then its database is joined, else the cluster is started. */
async function findDatabase(): Promise<OpenDatabase> {
  const { databaseUrl, dataFolder } = checkedEnv();
  const isServing = databaseUrl === null && runningServerOf(dataFolder) !== null;
  const joined = isServing ? runningClusterUrl(dataFolder) : databaseUrl;
  return openDatabase({ databaseUrl: joined, dataFolder, report });
}
