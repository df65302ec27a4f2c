import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { DatabaseProblem } from '@/lib/data/database-problem';

/** The system user that PostgreSQL runs as; null means as ourselves. */
export type ClusterAccount = { uid: number; gid: number } | null;

const ownAccountName = 'reelkin-db';
const existingAccountNames = ['postgres', '_postgres'];
const systemPath = `${process.env.PATH ?? ''}:/usr/sbin:/sbin`;

/**
 * Chooses the account: PostgreSQL refuses to run as root, so root hands it to the owner of an existing cluster,
 * or to a system user made for the purpose. Everyone else runs it as themselves.
 */
export function chooseClusterAccount(clusterFolder: string): ClusterAccount {
  if (process.getuid?.() !== 0) return null;
  const owner = statSync(clusterFolder, { throwIfNoEntry: false });
  if (owner !== undefined && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  const account = findAccount(ownAccountName) ?? createAccount() ?? firstExisting();
  if (account === null) {
    throw new DatabaseProblem(
      `PostgreSQL must not run as root, and no system user could be made for it. Run as an ordinary user, or make one: useradd --system ${ownAccountName}`,
    );
  }
  return account;
}

/** True when the account can enter the folder: each folder above it must let it through. */
export function canEnter(account: ClusterAccount, folder: string): boolean {
  if (account === null) return true;
  return spawnSync('/bin/sh', ['-c', 'cd "$0"', folder], { ...account, cwd: '/' }).status === 0;
}

function createAccount(): ClusterAccount {
  const nowhere = ['--no-create-home', '--home-dir', '/nonexistent', '--shell', '/usr/sbin/nologin'];
  spawnSync('useradd', ['--system', '--user-group', ...nowhere, ownAccountName], {
    env: { ...process.env, PATH: systemPath },
  });
  return findAccount(ownAccountName);
}

function firstExisting(): ClusterAccount {
  for (const name of existingAccountNames) {
    const account = findAccount(name);
    if (account !== null) return account;
  }
  return null;
}

function findAccount(name: string): ClusterAccount {
  const uid = readId('-u', name);
  const gid = readId('-g', name);
  return uid === null || gid === null ? null : { uid, gid };
}

function readId(flag: '-u' | '-g', name: string): number | null {
  const result = spawnSync('id', [flag, name], {
    encoding: 'utf8',
    env: { ...process.env, PATH: systemPath },
  });
  return result.status === 0 ? Number.parseInt(result.stdout, 10) : null;
}
