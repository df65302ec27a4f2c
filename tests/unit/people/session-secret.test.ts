import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keptSecret } from '@/lib/server/session-secret';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

let folder: ReturnType<typeof makeTemporaryFolder>;
beforeEach(() => {
  folder = makeTemporaryFolder();
});
afterEach(() => folder.remove());

test('the secret is made once, is long, and is for its owner only', () => {
  const dataFolder = join(folder.path, 'not', 'yet', 'there');
  const secret = keptSecret(dataFolder);
  expect(secret).toMatch(/^[\w-]{43}$/);
  expect(keptSecret(dataFolder)).toBe(secret);
  expect(readdirSync(dataFolder)).toEqual(['session-secret']);
  expect(statSync(join(dataFolder, 'session-secret')).mode & 0o777).toBe(0o600);
});

test('every data folder has its own', () => {
  expect(keptSecret(join(folder.path, 'a'))).not.toBe(keptSecret(join(folder.path, 'b')));
});
