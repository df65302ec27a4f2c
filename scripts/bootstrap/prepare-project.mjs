import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { clearStamp, contentHash, isStamped, writeStamp } from './content-stamp.mjs';
import { acquireLock } from './folder-lock.mjs';
import { packagesInstalled } from './packages-installed.mjs';
import { projectRoot } from './project-root.mjs';
import { runStep, StepFailed, startProgress } from './run-step.mjs';
import { runningServers } from './running-servers.mjs';

const node = process.execPath;
const runtime = `${process.platform} ${process.arch} ${process.versions.modules}`;

/**
 * Brings the checkout to the point where it can run: packages, Prisma client and, with `build`, the production
 * build. Each is done only when its inputs changed since, and by one process at a time.
 */
export async function prepareProject({ build }) {
  const release = await takeTurn();
  try {
    await installPackages();
    await generateClient();
    if (build) await buildApp();
  } finally {
    release();
  }
}

async function takeTurn() {
  const path = join(projectRoot, '.reelkin', 'prepare.lock');
  let progress = null;
  for (;;) {
    const { lock, holder } = acquireLock(path);
    if (lock !== null) {
      progress?.stop();
      return lock.release;
    }
    progress ??= startProgress(`Waiting for process ${holder.pid}, which is preparing this folder`);
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

async function installPackages() {
  if (packagesInstalled()) return;
  if (existsSync(join(projectRoot, 'node_modules'))) refuseUnderRunningServer('packages');
  await runStep({
    doing: 'Installing packages (npm ci)',
    done: 'Packages installed',
    ...npm(['ci', '--ignore-scripts', '--include=dev', '--include=optional', '--no-audit', '--no-fund']),
  });
}

/** npm by the path under which it started us, because a bare `npm` is a shell script on some systems. */
function npm(args) {
  const cli = process.env.npm_execpath;
  if (cli?.endsWith('npm-cli.js') && existsSync(cli)) return { command: node, args: [cli, ...args] };
  return { command: 'npm', args };
}

async function generateClient() {
  const inputs = ['prisma/schema.prisma', 'prisma.config.ts', 'package-lock.json'];
  const hash = contentHash(inputs);
  const stamp = 'prisma/generated/.reelkin-stamp';
  if (isStamped(stamp, hash)) return;
  clearStamp(stamp);
  await runStep({
    doing: 'Generating the database client (prisma generate)',
    done: 'Database client generated',
    command: node,
    args: ['node_modules/prisma/build/index.js', 'generate'],
    // Prisma would fetch an engine that `generate` does not use; naming any executable stops it, offline too.
    env: { PRISMA_SCHEMA_ENGINE_BINARY: node, PRISMA_HIDE_UPDATE_MESSAGE: '1', CHECKPOINT_DISABLE: '1' },
  });
  writeStamp(stamp, hash);
}

async function buildApp() {
  const sources = [
    'app',
    'lib',
    'prisma/schema.prisma',
    'public',
    'scripts/bootstrap/build-service-worker.mjs',
    'next.config.js',
    'tsconfig.json',
    'package.json',
    'package-lock.json',
  ];
  const hash = contentHash(sources, runtime);
  const stamp = '.next/reelkin-stamp';
  if (isStamped(stamp, hash)) return;
  refuseUnderRunningServer('build');
  clearStamp(stamp);
  await runStep({
    doing: 'Building the application (next build)',
    done: 'Application built',
    command: node,
    args: ['node_modules/next/dist/bin/next', 'build'],
    env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
  });
  // Packages may have come a moment ago: this module is asked for only now.
  const { buildServiceWorker } = await import('./build-service-worker.mjs');
  await buildServiceWorker();
  writeStamp(stamp, hash);
}

/** A server reads its build and its packages while it runs: replacing them under it would break its pages. */
function refuseUnderRunningServer(what) {
  const [server] = runningServers();
  if (server === undefined) return;
  throw new StepFailed(
    `The sources changed, so the ${what} must be made again, but a Reelkin from this folder is running at ${server.address} (process ${server.pid}). Stop it first.`,
    '',
  );
}
