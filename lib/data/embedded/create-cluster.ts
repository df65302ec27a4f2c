import { spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseProblem } from '@/lib/data/database-problem';
import type { ClusterAccount } from '@/lib/data/embedded/cluster-account';
import { clusterFolderOf } from '@/lib/data/embedded/cluster-home';
import type { PostgresPrograms } from '@/lib/data/embedded/postgres-programs';

/** The environment of PostgreSQL's programs: nothing of ours, so that no PG… variable changes what they do. */
export const postgresEnvironment: NodeJS.ProcessEnv = {
  NODE_ENV: 'production',
  PATH: process.env.PATH ?? '',
  LC_ALL: 'C',
  ...(process.platform === 'win32' ? { SystemRoot: process.env.SystemRoot } : {}),
};

/**
 * Makes a cluster in `home` unless there is one: UTF-8, byte order for text (the same answer on every system),
 * checksums on every page. It is made aside and renamed, so that a start cut short leaves no half of one.
 */
export function createCluster(options: {
  home: string;
  programs: PostgresPrograms;
  account: ClusterAccount;
  adminPassword: string;
}): void {
  const folder = clusterFolderOf(options.home);
  if (existsSync(folder)) {
    refuseOtherVersion(folder, options.programs.majorVersion);
    return;
  }
  const unfinished = `${folder}.new`;
  const passwordFile = join(options.home, 'password.new');
  rmSync(unfinished, { recursive: true, force: true });
  mkdirSync(unfinished, { mode: 0o700 });
  writeFileSync(passwordFile, options.adminPassword, { mode: 0o600 });
  if (options.account !== null) {
    for (const path of [unfinished, passwordFile]) chownSync(path, options.account.uid, options.account.gid);
  }
  try {
    runInitdb({ ...options, folder: unfinished, passwordFile });
  } finally {
    rmSync(passwordFile, { force: true });
  }
  renameSync(unfinished, folder);
}

function runInitdb(options: {
  programs: PostgresPrograms;
  account: ClusterAccount;
  folder: string;
  passwordFile: string;
}): void {
  const result = spawnSync(
    options.programs.initdb,
    [
      `--pgdata=${options.folder}`,
      '--username=postgres',
      `--pwfile=${options.passwordFile}`,
      '--auth=scram-sha-256',
      '--encoding=UTF8',
      '--locale=C',
      '--locale-provider=builtin',
      '--builtin-locale=C.UTF-8',
      '--data-checksums',
    ],
    { ...(options.account ?? {}), cwd: '/', env: postgresEnvironment, encoding: 'utf8' },
  );
  if (result.status === 0) return;
  const reason = result.error?.message ?? result.stderr.trim();
  throw new DatabaseProblem(`The embedded PostgreSQL could not make its data folder (initdb): ${reason}`);
}

function refuseOtherVersion(folder: string, majorVersion: string): void {
  const found = readFileSync(join(folder, 'PG_VERSION'), 'utf8').trim();
  if (found === majorVersion) return;
  throw new DatabaseProblem(
    `The data in ${folder} were made by PostgreSQL ${found}; this Reelkin brings PostgreSQL ${majorVersion}. Move them with pg_dump and pg_restore of that version.`,
  );
}
