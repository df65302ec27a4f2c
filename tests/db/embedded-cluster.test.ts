import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type EmbeddedCluster, runningClusterUrl, startEmbeddedCluster } from '@/lib/data/embedded-cluster';
import { makeTemporaryFolder } from '../support/temporary-folder';

const folder = makeTemporaryFolder();
const report: string[] = [];
let cluster: EmbeddedCluster;

beforeAll(async () => {
  cluster = await start();
  await query('create table kept (n int)');
});
afterAll(async () => {
  await cluster.stop();
  folder.remove();
});

function start(): Promise<EmbeddedCluster> {
  return startEmbeddedCluster({ dataFolder: folder.path, report: (line) => report.push(line) });
}

async function query(sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: cluster.url });
  client.on('error', () => {});
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

function postmasterPid(): number {
  return Number.parseInt(readFileSync(join(folder.path, 'postgres', 'postmaster.pid'), 'utf8'), 10);
}

describe('the embedded PostgreSQL', () => {
  it('keeps its promises about durability, text and who may connect', async () => {
    const settings = await query(
      `select name, setting from pg_settings where name in ('fsync', 'synchronous_commit', 'full_page_writes',
        'data_checksums', 'server_encoding', 'listen_addresses') order by name`,
    );
    expect(settings).toEqual([
      { name: 'data_checksums', setting: 'on' },
      { name: 'fsync', setting: 'on' },
      { name: 'full_page_writes', setting: 'on' },
      { name: 'listen_addresses', setting: '127.0.0.1' },
      { name: 'server_encoding', setting: 'UTF8' },
      { name: 'synchronous_commit', setting: 'on' },
    ]);
    expect(await query(`select usesuper from pg_user where usename = current_user`)).toEqual([
      { usesuper: false },
    ]);
    const stranger = new pg.Client({ connectionString: cluster.url.replace(/:[0-9a-f]+@/, ':guess@') });
    await expect(stranger.connect()).rejects.toThrow(/password authentication failed/);
  });

  it('can be found by a program beside the server', () => {
    expect(runningClusterUrl(folder.path)).toBe(cluster.url);
  });

  it('is started again at the same address when it is killed, with everything that was committed', async () => {
    await query('insert into kept values (1)');
    const killed = postmasterPid();
    process.kill(killed, 'SIGKILL');
    await expect.poll(() => report.at(-1), { timeout: 15_000 }).toBe('PostgreSQL is running again');
    expect(postmasterPid()).not.toBe(killed);
    expect(await query('select n from kept')).toEqual([{ n: 1 }]);
  });

  it('is stopped and started when the server before was killed and left it behind', async () => {
    await cluster.stop();
    const program = ['--import', 'tsx', 'tests/support/cluster-process.ts', folder.path];
    const server = spawn(process.execPath, program, { stdio: ['ignore', 'pipe', 'inherit'] });
    await new Promise((resolve) => server.stdout.once('data', resolve));
    const leftBehind = postmasterPid();
    server.kill('SIGKILL');
    await new Promise((resolve) => server.once('exit', resolve));
    await sleep(200);
    expect(postmasterPid()).toBe(leftBehind);

    cluster = await start();
    expect(report.at(-1)).toBe(
      `Stopping the PostgreSQL left over from an earlier run (process ${leftBehind})`,
    );
    expect(postmasterPid()).not.toBe(leftBehind);
    expect(await query('select n from kept')).toEqual([{ n: 1 }]);
  });

  it('starts beside a postmaster.pid whose process id belongs to another program now', async () => {
    await cluster.stop();
    writeFileSync(join(folder.path, 'postgres', 'postmaster.pid'), `${process.pid}\n${folder.path}\n`);
    cluster = await start();
    expect(await query('select n from kept')).toEqual([{ n: 1 }]);
  });
});
