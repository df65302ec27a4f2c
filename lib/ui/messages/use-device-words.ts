import { useEffect, useState } from 'react';
import type { Told } from '@/lib/ui/messages/device-words';

/** The words of a page, or those that this device has kept in its own language, see `device-words.ts`. */
export function useDeviceWords(told: Told): Told {
  const [kept, setKept] = useState<Told | null>(null);
  useEffect(() => {
    // A device that was never set to a language keeps nothing, and loads nothing for it.
    if (!document.cookie.includes('reelkin_language=')) return;
    void import('@/lib/ui/messages/device-words').then(
      ({ exchangeWords }) => setKept(exchangeWords(told)),
      () => undefined,
    );
  }, [told]);
  return kept ?? told;
}
