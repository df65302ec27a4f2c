import { spawnSync } from 'node:child_process';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { acquireLock, lockHolder } from '../../scripts/bootstrap/folder-lock.mjs';
import { makeTemporaryFolder } from '../support/temporary-folder';

let folder: ReturnType<typeof makeTemporaryFolder>;
let path: string;

beforeEach(() => {
  folder = makeTemporaryFolder();
  path = join(folder.path, 'a lock');
});
afterEach(() => folder.remove());

describe('a folder lock', () => {
  it('is held by one, and tells the others who and where', () => {
    const first = acquireLock(path, { address: 'http://here' });
    const second = acquireLock(path);
    expect(first.holder).toBeNull();
    expect(second).toMatchObject({ lock: null, holder: { pid: process.pid, address: 'http://here' } });
  });

  it('shows details that its holder learned later', () => {
    acquireLock(path).lock?.update({ address: 'http://there' });
    expect(lockHolder(path)).toMatchObject({ pid: process.pid, address: 'http://there' });
  });

  it('is free after its release, and leaves nothing behind', () => {
    acquireLock(path).lock?.release();
    expect(lockHolder(path)).toBeNull();
    expect(readdirSync(folder.path)).toEqual([]);
  });

  it('is taken over from a process that died', () => {
    const program = `import { acquireLock } from '${process.cwd()}/scripts/bootstrap/folder-lock.mjs';
      acquireLock(process.argv[1]);`;
    const dead = spawnSync(process.execPath, ['--input-type=module', '-e', program, path]);
    expect(dead.status).toBe(0);
    expect(readdirSync(folder.path)).toEqual(['a lock']);
    expect(lockHolder(path)).toBeNull();
    expect(acquireLock(path).holder).toBeNull();
    expect(readdirSync(folder.path)).toEqual(['a lock']);
  });

  it('is taken over when its process id now belongs to another program', () => {
    writeFileSync(path, JSON.stringify({ pid: process.pid, identity: 'another life', token: 'x' }));
    expect(acquireLock(path).holder).toBeNull();
  });

  it('is taken over when its file was cut short', () => {
    writeFileSync(path, '{"pid": 1');
    expect(acquireLock(path).holder).toBeNull();
  });

  it('is not taken over while another process is taking it over', () => {
    writeFileSync(path, JSON.stringify({ pid: process.pid, identity: 'another life', token: 'x' }));
    writeFileSync(`${path}.claim-x`, '');
    const contender = spawnSync(
      process.execPath,
      [
        '--input-type=module',
        '-e',
        `import { acquireLock } from '${process.cwd()}/scripts/bootstrap/folder-lock.mjs'; acquireLock(process.argv[1]);`,
        path,
      ],
      { timeout: 1500 },
    );
    expect(contender.signal).toBe('SIGTERM');
  });
});
