import { totalmem } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { chooseClusterAccount } from '@/lib/data/embedded/cluster-account';
import { clusterFolderOf, existingClusterHome, findClusterHome } from '@/lib/data/embedded/cluster-home';
import {
  adminUrl,
  type ClusterSettings,
  ownerUrl,
  readClusterSettings,
  writeClusterSettings,
} from '@/lib/data/embedded/cluster-settings';
import { createCluster } from '@/lib/data/embedded/create-cluster';
import { findFreePort } from '@/lib/data/embedded/free-port';
import { stopOrphanedPostmaster } from '@/lib/data/embedded/orphaned-postmaster';
import { preparePostgresPrograms } from '@/lib/data/embedded/postgres-programs';
import { type Postmaster, startPostmaster } from '@/lib/data/embedded/postmaster';

const startAttempts = 10;
const sharedMemoryWaitMs = 500;

const MIB = 2 ** 20;

/** What PostgreSQL keeps of the tables itself: an eighth of the memory, 128 MiB to 4 GiB. */
const sharedBuffersMib = Math.floor(Math.min(4096, Math.max(128, totalmem() / 8 / MIB)));

/** Durable, for this machine only, and modest: a plant's tablet server may share the machine with others. */
const serverSettings: Record<string, string> = {
  shared_buffers: `${sharedBuffersMib}MB`,
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  timezone: 'UTC',
  log_timezone: 'UTC',
  log_checkpoints: 'off',
  max_connections: '60',
  jit: 'off',
};

/** For tests, whose data outlive nothing: no waiting for the disk. */
const temporarySettings: Record<string, string> = {
  shared_buffers: '128MB',
  fsync: 'off',
  full_page_writes: 'off',
  synchronous_commit: 'off',
};

/** A running embedded PostgreSQL: `url` is its database as the owner, `adminUrl` its superuser. */
export type EmbeddedCluster = { url: string; adminUrl: string; stop(): Promise<void> };

/**
 * Starts the PostgreSQL that keeps its data under `dataFolder`, making it at the first start and stopping one left
 * over from a killed server. It is started again if it dies. The caller holds the lock on `dataFolder`. With `temporary`,
 * for tests, it is fast and forgetful. Throws `DatabaseProblem` with words for a person.
 */
export async function startEmbeddedCluster(options: {
  dataFolder: string;
  report: (line: string) => void;
  temporary?: boolean;
}): Promise<EmbeddedCluster> {
  const temporary = options.temporary ?? false;
  const home = findClusterHome(options.dataFolder);
  const clusterFolder = clusterFolderOf(home);
  const account = chooseClusterAccount(clusterFolder);
  const programs = preparePostgresPrograms(account);
  const remembered = readClusterSettings(home);
  createCluster({ home, programs, account, adminPassword: remembered.adminPassword });
  await stopOrphanedPostmaster(clusterFolder, options.report);

  const start = (settings: ClusterSettings): Promise<Postmaster> =>
    startPostmaster({
      postgres: programs.postgres,
      account,
      clusterFolder,
      logPath: join(home, 'postgres.log'),
      port: settings.port,
      settings: temporary ? { ...serverSettings, ...temporarySettings } : serverSettings,
      temporary,
      probeUrl: adminUrl(settings),
      report: options.report,
    });
  const { postmaster, settings } = await startOnFreePort(home, remembered, start);
  try {
    await createDatabase(settings);
  } catch (error) {
    await postmaster.stop();
    throw error;
  }
  return { url: ownerUrl(settings), adminUrl: adminUrl(settings), stop: () => postmaster.stop() };
}

/** The owner's connection string of the cluster that a running server has started under `dataFolder`, or null. */
export function runningClusterUrl(dataFolder: string): string | null {
  const home = existingClusterHome(dataFolder);
  return home === null ? null : ownerUrl(readClusterSettings(home));
}

/** Another program may take the port between our look and PostgreSQL's, so it is tried again with another. */
async function startOnFreePort(
  home: string,
  remembered: ClusterSettings,
  start: (settings: ClusterSettings) => Promise<Postmaster>,
): Promise<{ postmaster: Postmaster; settings: ClusterSettings }> {
  for (let attempt = 1; ; attempt += 1) {
    const preferred = attempt <= 2 ? remembered.port : 0;
    const settings = { ...remembered, port: await findFreePort(preferred) };
    writeClusterSettings(home, settings);
    try {
      return { postmaster: await start(settings), settings };
    } catch (error) {
      const portTaken = error instanceof Error && error.message.includes('could not bind');
      const sharedMemoryBusy = error instanceof Error && error.message.includes('shared memory block');
      if (attempt === startAttempts || !(portTaken || sharedMemoryBusy)) throw error;
      // The sessions of a killed PostgreSQL notice its death within moments, and leave its shared memory.
      if (sharedMemoryBusy) await sleep(sharedMemoryWaitMs);
    }
  }
}

/** Makes the owner and the database at the first start; the owner may make roles, and is no superuser. */
async function createDatabase(settings: ClusterSettings): Promise<void> {
  const client = new pg.Client({ connectionString: adminUrl(settings) });
  await client.connect();
  try {
    const role = await client.query(`select 1 from pg_roles where rolname = 'reelkin'`);
    if (role.rowCount === 0) {
      const password = client.escapeLiteral(settings.ownerPassword);
      await client.query(`create role reelkin login createrole createdb password ${password}`);
    }
    const database = await client.query(`select 1 from pg_database where datname = 'reelkin'`);
    if (database.rowCount === 0) await client.query('create database reelkin owner reelkin');
  } finally {
    await client.end();
  }
}
