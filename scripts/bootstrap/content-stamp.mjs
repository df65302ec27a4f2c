import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { projectRoot } from './project-root.mjs';

/** SHA-256 over names and contents of these files and folders (relative to the project; a missing one counts too). */
export function contentHash(paths, salt = '') {
  const hash = createHash('sha256').update(salt);
  for (const path of paths) addPath(hash, path);
  return hash.digest('hex');
}

/** True when the stamp file holds exactly this hash: the work it stands for was finished on the same content. */
export function isStamped(stampPath, hash) {
  try {
    return readFileSync(join(projectRoot, stampPath), 'utf8').trim() === hash;
  } catch {
    return false;
  }
}

/** Removes the stamp before the work begins, so that work cut short is done again. */
export function clearStamp(stampPath) {
  rmSync(join(projectRoot, stampPath), { force: true });
}

/** Writes the stamp once the work is finished. */
export function writeStamp(stampPath, hash) {
  const path = join(projectRoot, stampPath);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${hash}\n`);
}

function addPath(hash, path) {
  const full = join(projectRoot, path);
  const stats = statSync(full, { throwIfNoEntry: false });
  if (stats?.isDirectory()) {
    for (const name of readdirSync(full).sort()) addPath(hash, `${path}/${name}`);
  } else {
    const content =
      stats === undefined ? 'missing' : createHash('sha256').update(readFileSync(full)).digest('hex');
    hash.update(`${path}\0${content}\0`);
  }
}
