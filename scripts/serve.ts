import { migrate } from '@/lib/data/migrate';
import type { Env } from '@/lib/server/env';
import { findConflict, reachableHost } from './bootstrap/find-conflict.mjs';
import { registerServer } from './bootstrap/running-servers.mjs';
import { checkedEnv } from './serve/checked-env';
import { openDatabase } from './serve/open-database';
import { explain, StartProblem } from './serve/start-problem';
import { StopRequested, watchForStop } from './serve/stop-request';
import { lanAnnouncement } from './serve/tls/announce-lan';
import { openSecureServing, type SecureServing } from './serve/tls/secure-serving';

const report = (line: string): void => console.log(line);
const stopRequest = watchForStop(report);

/** What must be closed at the end, in the order in which it was opened. */
const closers: (() => Promise<void> | void)[] = [];

process.exitCode = await run();
process.exit();

/** Serves until told to stop; resolves with the exit code. */
async function run(): Promise<number> {
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
  let code = 0;
  try {
    await start(checkedEnv());
    await stopRequest.requested;
  } catch (error) {
    if (!(error instanceof StopRequested)) {
      console.error(explain(error));
      code = 1;
    }
  }
  for (const close of closers.reverse()) await close();
  if (code === 0) report('Reelkin has stopped');
  return code;
}

async function start(env: Env): Promise<void> {
  const { host, port, dataFolder, demo } = env;
  const conflict = await findConflict({
    host,
    port,
    dataFolder: env.databaseUrl === null ? dataFolder : null,
  });
  if (conflict !== null) throw new StartProblem(conflict);

  const secure = await openSecureServing(env, report);
  const database = await openDatabase({ databaseUrl: env.databaseUrl, dataFolder, report });
  closers.push(() => database.close());
  await stopRequest.unlessRequested(migrate(database.url, report));

  // The pages read their settings when they are loaded, which happens from here on.
  process.env.DATABASE_URL = database.url;
  if (secure?.authority) process.env.REELKIN_TLS_AUTHORITY = secure.authority.path;
  process.env.REELKIN_DEMO = demo ? '1' : '0';
  if (demo) {
    const { loadDemo } = await import('@/scripts/demo/load-demo');
    await stopRequest.unlessRequested(loadDemo({ report }));
  }
  await serveHttp(env, { secure, announce: database.announce });
}

async function serveHttp(
  { host, port }: Env,
  { secure, announce }: { secure: SecureServing | null; announce: (address: string) => void },
): Promise<void> {
  const { startHttpServer } = await import('./serve/http-server');
  const dev = process.argv.includes('--dev');
  const server = await startHttpServer({ host, port, dev, pair: secure?.pair ?? null });
  if (secure !== null) closers.push(secure.keepCurrent(server.useCertificate));
  closers.push(() => server.stop(stopRequest.hurry));
  keepRunning();
  const scheme = secure === null ? 'http' : 'https';
  const origin = `${scheme}://${reachableHost(secure?.host ?? host)}:${server.port}`;
  announce(origin);
  closers.push(registerServer(origin));
  report(`Reelkin is ready at ${origin}  (stop: Ctrl-C)`);
  if (secure?.authority) report(await lanAnnouncement(origin, secure.authority.fingerprint));

  const { createSetupLink } = await import('@/lib/server/create-setup-link');
  const link = await createSetupLink(origin);
  if (link !== null) report(`There is no administrator yet. Make the first one here, once: ${link}`);
}

/** A bug in one request must not end the others' work; Next's own server does the same. */
function keepRunning(): void {
  process.on('uncaughtException', (error) => console.error('Unexpected error:', error));
  process.on('unhandledRejection', (reason) => console.error('Unexpected error:', reason));
}
