import { inject } from 'vitest';
import type { ReelkinServer } from './provided-context';

/** The server of the lane that this file runs in; vitest numbers the lanes from 1. */
export function laneServer(): ReelkinServer {
  const server = inject('reelkinServers')[Number(process.env.VITEST_POOL_ID) - 1];
  if (server === undefined) throw new Error(`Lane ${process.env.VITEST_POOL_ID} has no server.`);
  return server;
}
