import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startTestServer } from '../support/start-test-server';
import { makeTemporaryFolder } from '../support/temporary-folder';

let folder: ReturnType<typeof makeTemporaryFolder>;

beforeEach(() => {
  folder = makeTemporaryFolder();
});
afterEach(() => folder.remove());

async function health(origin: string): Promise<unknown> {
  const response = await fetch(`${origin}/api/health`);
  return response.json();
}

/** `npm start` in the foreground, for starts that must end by themselves. */
function npmStart(env: Record<string, string>): { status: number | null; stderr: string } {
  const variables = { ...process.env, ...env, NODE_ENV: 'production' as const };
  return spawnSync(process.execPath, ['scripts/start.mjs'], {
    env: variables,
    encoding: 'utf8',
    timeout: 120_000,
  });
}

describe('a server', () => {
  it('prints one line with its address, answers there, and stops cleanly', async () => {
    const server = await startTestServer({ REELKIN_DATA: folder.path });
    expect(server.output().match(/ready at http:\/\/127\.0\.0\.1:\d+/g)).toHaveLength(1);
    expect(await health(server.origin)).toMatchObject({ status: 'ok', database: 'ok' });
    expect(await server.stop()).toBe(0);
    expect(server.output()).toContain('Reelkin has stopped');
    expect(() => readFileSync(join(folder.path, 'postgres', 'postmaster.pid'))).toThrow(/ENOENT/);
  });

  it('tells a second start where it runs', async () => {
    const server = await startTestServer({ REELKIN_DATA: folder.path });
    const pid = JSON.parse(readFileSync(join(folder.path, 'server.lock'), 'utf8')).pid;
    const sameData = npmStart({ REELKIN_DATA: folder.path, PORT: '0' });
    expect(sameData.status).toBe(1);
    expect(sameData.stderr).toContain(`Reelkin is already running at ${server.origin} (process ${pid}`);
    const samePort = npmStart({
      REELKIN_DATA: join(folder.path, 'other'),
      PORT: new URL(server.origin).port,
    });
    expect(samePort.status).toBe(1);
    expect(samePort.stderr).toContain(`Reelkin is already running at ${server.origin} (process ${pid})`);
    await server.stop();
  });

  it('names the port that another program has', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const address = other.address();
    const port = String(typeof address === 'object' ? address?.port : '');
    const start = npmStart({ REELKIN_DATA: folder.path, PORT: port });
    other.close();
    expect(start.status).toBe(1);
    expect(start.stderr).toContain(`Port ${port} is in use by another program.`);
  });

  it('starts again after kill -9, and ends the PostgreSQL that was left behind', async () => {
    const killed = await startTestServer({ REELKIN_DATA: folder.path });
    await killed.kill();
    const server = await startTestServer({ REELKIN_DATA: folder.path });
    expect(server.output()).toContain('Stopping the PostgreSQL left over from an earlier run');
    expect(await health(server.origin)).toMatchObject({ status: 'ok', database: 'ok' });
    expect(await server.stop()).toBe(0);
  });

  it('goes on when its PostgreSQL is killed', async () => {
    const server = await startTestServer({ REELKIN_DATA: folder.path });
    const pid = Number.parseInt(readFileSync(join(folder.path, 'postgres', 'postmaster.pid'), 'utf8'), 10);
    process.kill(pid, 'SIGKILL');
    await expect.poll(() => server.output(), { timeout: 60_000 }).toContain('PostgreSQL is running again');
    await expect.poll(() => health(server.origin), { timeout: 60_000 }).toMatchObject({ database: 'ok' });
    expect(await server.stop()).toBe(0);
  });

  it('says which setting is bad', () => {
    const start = npmStart({ REELKIN_DATA: folder.path, PORT: '99999' });
    expect(start).toMatchObject({
      status: 1,
      stderr: expect.stringContaining('PORT must be a whole number'),
    });
  });
});
