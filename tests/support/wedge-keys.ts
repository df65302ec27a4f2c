import type { ScannerSettings } from '@/lib/domain/scanning/scanner-settings';
import { advanceWedge, type Burst, NO_BURST, type WedgeKey } from '@/lib/domain/scanning/wedge';

/** A key as a test writes it; 5 ms after the one before, unless it says otherwise. */
export type TypedKey = Partial<WedgeKey> & { key: string; afterMs?: number };

/** Types keys one after the other, long after anything else. */
export function typeKeys(
  keys: readonly TypedKey[],
  settings: ScannerSettings,
): { scans: string[]; taken: number; burst: Burst } {
  let burst = NO_BURST;
  let atMs = 100_000;
  let taken = 0;
  const scans: string[] = [];
  for (const { afterMs = 5, ...key } of keys) {
    atMs += afterMs;
    const step = advanceWedge(
      burst,
      { kind: 'down', ctrl: false, alt: false, meta: false, isRepeat: false, ...key, atMs },
      settings,
    );
    burst = step.burst;
    if (step.isTaken) taken += 1;
    if (step.scan !== null) scans.push(step.scan);
  }
  return { scans, taken, burst };
}
