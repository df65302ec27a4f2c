import { useRef, useState } from 'react';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';
import { identifyCode } from '@/lib/ui/shop/identify-code';

/** A scanned code and what it names: `scan` is null while that is asked for, and when there was no answer. */
export type LookedUp = { code: string; scan: ScanPicture | null; isAsking: boolean };

/** Looks up what is scanned; only the newest scan counts. */
export function useLookedUp(): {
  found: LookedUp | null;
  lookUp: (code: string) => Promise<ScanPicture | null>;
  clear: () => void;
} {
  const [found, setFound] = useState<LookedUp | null>(null);
  const newest = useRef(0);
  return {
    found,
    async lookUp(code) {
      newest.current += 1;
      const own = newest.current;
      setFound({ code, scan: null, isAsking: true });
      const scan = await identifyCode(code);
      if (own === newest.current) setFound({ code, scan, isAsking: false });
      return scan;
    },
    clear() {
      newest.current += 1;
      setFound(null);
    },
  };
}
