/** Bits of a badge check that a device keeps: few enough to say nothing about a PIN, enough to stop a slip. */
export const CHECK_BITS = 6;
/** Wrong PINs in a row before a badge waits, on a device without the server. */
export const OFFLINE_TRIES_MAX = 5;
/** How long it then waits, in milliseconds. */
export const OFFLINE_WAIT_MS = 5 * 60_000;
/** How long after a person last signed in on a device with the server they may come back to it without, in milliseconds. */
export const OFFLINE_SIGN_IN_MS = 14 * 24 * 3600_000;

/** What a device keeps of how a badge was tried without the server. */
export type OfflineTries = { wrongCount: number; waitUntilMs: number };

/** The tries after one more; `isRight` ends the count. */
export function afterTry(tries: OfflineTries, isRight: boolean, nowMs: number): OfflineTries {
  if (isRight) return { wrongCount: 0, waitUntilMs: 0 };
  const wrongCount = tries.wrongCount + 1;
  return wrongCount < OFFLINE_TRIES_MAX
    ? { wrongCount, waitUntilMs: 0 }
    : { wrongCount: 0, waitUntilMs: nowMs + OFFLINE_WAIT_MS };
}

/** The few bits of a digest that are kept. */
export function checkBits(digest: Uint8Array): number {
  return (digest[0] ?? 0) & (2 ** CHECK_BITS - 1);
}
