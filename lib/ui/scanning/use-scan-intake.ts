import { useContext, useRef, useState } from 'react';
import { bareCode } from '@/lib/domain/scanning/bare-code';
import type { PayloadFault, Scanned } from '@/lib/domain/scanning/read-payload';
import {
  isRepeatedScan,
  SAME_SCAN_MS,
  SAME_SIGHT_MS,
  type SeenScan,
} from '@/lib/domain/scanning/repeated-scan';
import { readLabelLater } from '@/lib/ui/scanning/read-label-later';
import type { OnScan, ScanSource } from '@/lib/ui/scanning/scanned-code';
import { SerialPatterns } from '@/lib/ui/scanning/serial-patterns';
import { giveSignal } from '@/lib/ui/shop/signals';

/** What a scan could not be read as, or what its scanner should be set up for; null when there is nothing to say. */
export type ScanRemark = PayloadFault | 'separator_lost' | null;

/**
 * Makes codes of payloads and hands them on in their order: the same scan counts once, labels are read, and what
 * cannot be a code is said and heard.
 */
export function useScanIntake(onScan: OnScan): {
  /** Takes a payload; its code goes to `into` instead, where that is given. */
  take: (payload: string, source: ScanSource, into?: OnScan) => void;
  remark: ScanRemark;
} {
  const patterns = useContext(SerialPatterns);
  const [remark, setRemark] = useState<ScanRemark>(null);
  const seen = useRef<SeenScan | null>(null);
  const reading = useRef<Promise<void> | null>(null);
  const newest = useRef(onScan);
  newest.current = onScan;

  const hand = (scanned: Scanned, into: OnScan): void => {
    if (scanned.ok) {
      setRemark(scanned.warnings.includes('separator_lost') ? 'separator_lost' : null);
      into(scanned.code, scanned.facts);
    } else {
      setRemark(scanned.fault);
      giveSignal('stop');
    }
  };
  const take = (
    payload: string,
    source: ScanSource,
    into: OnScan = (code, label) => newest.current(code, label),
  ): void => {
    const scan = { payload, atMs: performance.now() };
    const sameMs = source === 'camera' ? SAME_SIGHT_MS : SAME_SCAN_MS;
    const isRepeated = source !== 'typed' && isRepeatedScan(seen.current, scan, sameMs);
    seen.current = scan;
    if (isRepeated) return;
    const code = bareCode(payload);
    if (code !== null && reading.current === null) {
      hand({ ok: true, code, facts: null, warnings: [] }, into);
      return;
    }
    const before = reading.current ?? Promise.resolve();
    const own = before
      .then(() => readLabelLater(payload, patterns))
      .then((scanned) => {
        if (reading.current === own) reading.current = null;
        hand(scanned, into);
      });
    reading.current = own;
  };
  return { take, remark };
}
