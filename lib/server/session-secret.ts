import { randomBytes } from 'node:crypto';
import { linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { settings } from '@/lib/server/settings';

let remembered: string | null = null;

/**
 * The secret that session cookies are sealed with: REELKIN_SECRET, or one made at the first start and kept under
 * REELKIN_DATA for this account's eyes only. Servers that share their people need one REELKIN_SECRET.
 */
export function sessionSecret(): string {
  remembered ??= settings().sessionSecret ?? keptSecret(settings().dataFolder);
  return remembered;
}

/** Reads the secret of a data folder, making it where there is none; any number of processes get the same one. */
export function keptSecret(dataFolder: string): string {
  const path = join(dataFolder, 'session-secret');
  const kept = readSecret(path);
  if (kept !== null) return kept;
  mkdirSync(dataFolder, { recursive: true });
  const draft = `${path}.${process.pid}-${randomBytes(4).toString('hex')}`;
  writeFileSync(draft, randomBytes(32).toString('base64url'), { mode: 0o600, flag: 'wx' });
  try {
    // A link fails where the name exists: who comes second reads the whole secret of who came first.
    linkSync(draft, path);
  } catch (error) {
    if (!isCode(error, 'EEXIST')) throw error;
  } finally {
    rmSync(draft);
  }
  const made = readSecret(path);
  if (made === null) throw new Error(`The session secret at ${path} cannot be read.`);
  return made;
}

function readSecret(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (isCode(error, 'ENOENT')) return null;
    throw error;
  }
}

function isCode(error: unknown, code: string): boolean {
  return error instanceof Error && 'code' in error && error.code === code;
}
