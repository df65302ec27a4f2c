import type { LockHolder } from './folder-lock.mjs';

export function serverLockPath(dataFolder: string): string;
export function runningServerOf(dataFolder: string): LockHolder | null;
export function findConflict(options: {
  host: string;
  port: number;
  dataFolder: string | null;
}): Promise<string | null>;
export function describeHolder(holder: LockHolder, dataFolder: string): string;
export function describePort(host: string, port: number): Promise<string>;
export function reachableHost(host: string): string;
