import { LANGUAGE_COOKIE, type Language, readLanguage } from '@/lib/domain/language';
import type { Words } from '@/lib/ui/messages/words';

// Another name than before: what is kept under that one is not compiled.
const KEPT_WORDS = 'reelkin.compiled-words';

/** A language with its texts. */
export type Told = { language: Language; messages: Partial<Words> };

/**
 * Keeps the words that came with a page in this device's language, and gives those that were kept when a page came in
 * another one: the page that opens without the server is the same for every device. Null when there is none to give.
 */
export function exchangeWords(told: Told): Told | null {
  const cookie = document.cookie.split('; ').find((each) => each.startsWith(`${LANGUAGE_COOKIE}=`));
  const own = readLanguage(cookie?.slice(LANGUAGE_COOKIE.length + 1));
  try {
    if (own !== told.language) return readKept(own);
    if (own !== 'en') localStorage.setItem(KEPT_WORDS, JSON.stringify(told));
  } catch {
    // A device that keeps nothing shows the words that came.
  }
  return null;
}

function readKept(language: Language): Told | null {
  const kept: unknown = JSON.parse(localStorage.getItem(KEPT_WORDS) ?? 'null');
  return isTold(kept) && kept.language === language ? kept : null;
}

/** Written by this page's own code, under its own key. */
function isTold(kept: unknown): kept is Told {
  return typeof kept === 'object' && kept !== null && 'language' in kept && 'messages' in kept;
}
