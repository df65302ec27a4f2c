import { useEffect, useState } from 'react';
import { LANGUAGE_COOKIE, type Language, readLanguage } from '@/lib/ui/messages/language';
import type { Words } from '@/lib/ui/messages/words';

const KEPT_WORDS = 'reelkin.words';

type Told = { language: Language; messages: Partial<Words> };

/**
 * The words of a page, which came with it. A device keeps the last ones in its own language: the page that opens
 * without the server is the same for every device, and takes them from there.
 */
export function useDeviceWords(told: Told): Told {
  const [kept, setKept] = useState<Told | null>(null);
  const { language, messages } = told;
  useEffect(() => {
    const own = deviceLanguage();
    try {
      if (own !== language) setKept(readKept(own));
      else if (own === 'en') localStorage.removeItem(KEPT_WORDS);
      else localStorage.setItem(KEPT_WORDS, JSON.stringify({ language, messages }));
    } catch {
      // A device that keeps nothing shows the words that came.
    }
  }, [language, messages]);
  return kept ?? told;
}

function deviceLanguage(): Language {
  const cookie = document.cookie.split('; ').find((each) => each.startsWith(`${LANGUAGE_COOKIE}=`));
  return readLanguage(cookie?.slice(LANGUAGE_COOKIE.length + 1));
}

function readKept(language: Language): Told | null {
  const kept: unknown = JSON.parse(localStorage.getItem(KEPT_WORDS) ?? 'null');
  return isTold(kept) && kept.language === language ? kept : null;
}

/** Written by this page's own code, under its own key. */
function isTold(kept: unknown): kept is Told {
  return typeof kept === 'object' && kept !== null && 'language' in kept && 'messages' in kept;
}
