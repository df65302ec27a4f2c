import { createServer } from 'node:net';

/** A TCP port of 127.0.0.1 that is free at this moment: the preferred one if it still is, else any. */
export async function findFreePort(preferred: number): Promise<number> {
  return (await tryPort(preferred)) ?? (await tryPort(0)) ?? preferred;
}

function tryPort(port: number): Promise<number | null> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(null));
    probe.listen({ host: '127.0.0.1', port }, () => {
      const address = probe.address();
      probe.close(() => resolve(address !== null && typeof address === 'object' ? address.port : null));
    });
  });
}
