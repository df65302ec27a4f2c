import { createServer } from 'node:net';
import { join } from 'node:path';
import { lockHolder } from './folder-lock.mjs';
import { runningServers } from './running-servers.mjs';

const probeTimeoutMs = 2000;

/** Path of the lock file that a running server holds in its data folder. */
export function serverLockPath(dataFolder) {
  return join(dataFolder, 'server.lock');
}

/** The server that runs on a data folder, with its `pid` and, once it is ready, its `address`; null when none does. */
export function runningServerOf(dataFolder) {
  return lockHolder(serverLockPath(dataFolder));
}

/**
 * One sentence for a person when a server cannot start because of another process, null when the way is free.
 * `dataFolder` is null when the data are in a PostgreSQL of the user's own; port 0 conflicts with nothing.
 */
export async function findConflict({ host, port, dataFolder }) {
  const holder = dataFolder === null ? null : runningServerOf(dataFolder);
  if (holder !== null) return describeHolder(holder, dataFolder);
  if (port === 0 || (await canListen(host, port))) return null;
  return describePort(host, port);
}

/** The sentence about the living process that holds a data folder. */
export function describeHolder(holder, dataFolder) {
  const where = `process ${holder.pid}, data in ${dataFolder}`;
  if (holder.address === undefined) return `Reelkin is already starting or busy with these data (${where}).`;
  return `Reelkin is already running at ${holder.address} (${where}). Open that address, or stop it first.`;
}

/** The sentence about whoever has the port, when it is not ours to take. */
export async function describePort(host, port) {
  const address = `http://${reachableHost(host)}:${port}`;
  const own = runningServers().find((server) => String(server.address).endsWith(`:${port}`));
  const advice = `Stop it first, or choose another port: PORT=${port + 1} npm start`;
  if (own !== undefined) {
    return `Reelkin is already running at ${own.address} (process ${own.pid}) with other data. ${advice}`;
  }
  if (await answersLikeReelkin(address)) {
    return `Another Reelkin, started from another folder, is already running at ${address}. ${advice}`;
  }
  return `Port ${port} is in use by another program. ${advice}`;
}

/** The host to write into an address: a wildcard is no place to go to, and IPv6 needs its brackets. */
export function reachableHost(host) {
  if (host === '0.0.0.0') return '127.0.0.1';
  if (host === '::') return '[::1]';
  return host.includes(':') ? `[${host}]` : host;
}

function canListen(host, port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error) => resolve(error.code !== 'EADDRINUSE'));
    probe.listen({ host, port }, () => probe.close(() => resolve(true)));
  });
}

async function answersLikeReelkin(address) {
  try {
    const response = await fetch(`${address}/api/health`, { signal: AbortSignal.timeout(probeTimeoutMs) });
    const body = await response.json();
    return typeof body.database === 'string' && typeof body.version === 'string';
  } catch {
    return false;
  }
}
