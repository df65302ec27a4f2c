export type LockHolder = { pid: number; [detail: string]: unknown };
export type FolderLock = { update(details: Record<string, unknown>): void; release(): void };

export function acquireLock(
  path: string,
  details?: Record<string, unknown>,
): { lock: FolderLock; holder: null } | { lock: null; holder: LockHolder };
export function lockHolder(path: string): LockHolder | null;
