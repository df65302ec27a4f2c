import type { LockHolder } from './folder-lock.mjs';

export function registerServer(address: string): () => void;
export function runningServers(): LockHolder[];
