import { useState } from 'react';
import { isMoreThanKnown } from '@/lib/ui/shop/count-method';
import { giveSignal } from '@/lib/ui/shop/signals';

/**
 * Asks once about a count above the quantity last known, which a slip of the fingers makes easily. `doubted` is the
 * count while it is asked about; `mayPass` says whether it goes on, and asks if not.
 */
export function useCountDoubt(
  known: number | null,
  count: number | null,
): { doubted: number | null; mayPass: () => boolean } {
  const [asked, setAsked] = useState<number | null>(null);
  return {
    doubted: asked === count ? asked : null,
    mayPass() {
      if (asked === count || !isMoreThanKnown(count, known)) return true;
      setAsked(count);
      giveSignal('attention');
      return false;
    },
  };
}
