import { randomUUID } from 'node:crypto';
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { processIdentity } from './process-identity.mjs';

const abandonedClaimMs = 10_000;

/**
 * Takes the lock file for this process, or says who holds it: `{ lock, holder: null }` or `{ lock: null, holder }`.
 * A lock whose process has died is taken over. `details` are kept in the file for whoever finds it held.
 */
export function acquireLock(path, details = {}) {
  const token = randomUUID();
  mkdirSync(dirname(path), { recursive: true });
  for (;;) {
    if (createWhole(path, lockText(token, details))) return { lock: heldLock(path, token), holder: null };
    const holder = readHolder(path);
    if (holder === null) continue;
    if (isAlive(holder)) return { lock: null, holder };
    removeStale(path, holder.token);
  }
}

/** The living process that holds the lock file, with its details; null when the lock is free. */
export function lockHolder(path) {
  const holder = readHolder(path);
  return holder !== null && isAlive(holder) ? holder : null;
}

function heldLock(path, token) {
  return {
    update(details) {
      const temporary = `${path}.${token}`;
      writeFileSync(temporary, lockText(token, details));
      renameSync(temporary, path);
    },
    release() {
      if (readHolder(path)?.token === token) rmSync(path, { force: true });
    },
  };
}

function lockText(token, details) {
  const { pid } = process;
  return JSON.stringify({ ...details, pid, identity: processIdentity(pid), token });
}

/** Makes the file with its content in one step, so that nobody can read half of it; false when it exists. */
function createWhole(path, text) {
  const temporary = `${path}.${randomUUID()}`;
  writeFileSync(temporary, text);
  try {
    linkSync(temporary, path);
    return true;
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  } finally {
    rmSync(temporary, { force: true });
  }
}

function readHolder(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch (error) {
    if (error.code === 'ENOENT') return null;
    if (error instanceof SyntaxError) return { token: 'unreadable', pid: 0, identity: null };
    throw error;
  }
}

function isAlive(holder) {
  return holder.identity !== null && processIdentity(holder.pid) === holder.identity;
}

/**
 * Removes a dead process's lock. Two takers may find the same dead lock, and the slower one must not remove the
 * lock that the faster one has made since: only the holder of the claim on that dead lock's token may remove it.
 */
function removeStale(path, staleToken) {
  const claim = `${path}.claim-${staleToken}`;
  if (!createWhole(claim, '')) {
    if (ageMs(claim) > abandonedClaimMs) rmSync(claim, { force: true });
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    return;
  }
  try {
    if (readHolder(path)?.token === staleToken) rmSync(path, { force: true });
  } finally {
    rmSync(claim, { force: true });
  }
}

function ageMs(path) {
  return Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
}
