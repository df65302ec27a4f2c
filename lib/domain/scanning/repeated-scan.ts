/** How long the same scan of a scanner counts once. */
export const SAME_SCAN_MS = 1000;
/** How long a camera must not have seen a code before it counts again: it sees it many times a second. */
export const SAME_SIGHT_MS = 2000;

/** The scan that was seen last. */
export type SeenScan = { payload: string; atMs: number };

/** Whether a scan is the one before once more, less than `sameMs` after it was last seen. */
export function isRepeatedScan(before: SeenScan | null, scan: SeenScan, sameMs: number): boolean {
  return before !== null && before.payload === scan.payload && scan.atMs - before.atMs < sameMs;
}
