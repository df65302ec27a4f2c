import type { Language } from '@/lib/domain/language';
import { en } from '@/lib/ui/messages/en';
import { es } from '@/lib/ui/messages/es';
import type { Translation } from '@/lib/ui/messages/translation';
import { zhHant } from '@/lib/ui/messages/zh-hant';

/** Every text of a page. */
export type Words = typeof en;

const WORDS: Record<Language, Words> = { en, es: translated(es), 'zh-Hant': translated(zhHant) };

/** The texts of a language. Only the server imports this. */
export function wordsOf(language: Language): Words {
  return WORDS[language];
}

/** The types of the messages are those of the English texts; tests/unit/languages.test.ts proves that they hold. */
function translated(words: Translation): Words {
  return words as Words;
}
