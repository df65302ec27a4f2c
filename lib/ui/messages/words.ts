import type { Language } from '@/lib/domain/language';
import { en } from '@/lib/ui/messages/en';
import { es } from '@/lib/ui/messages/es';
import type { OperatorWords } from '@/lib/ui/messages/operator-words';
import { zhHant } from '@/lib/ui/messages/zh-hant';

/** Every text of a page. */
export type Words = typeof en;

const WORDS: Record<Language, Words> = { en, es: translated(es), 'zh-Hant': translated(zhHant) };

/** The texts of a language; what is not for operators is in English. Only the server imports this. */
export function wordsOf(language: Language): Words {
  return WORDS[language];
}

/** The types of the messages are those of the English texts; tests/unit/languages.test.ts proves that they hold. */
function translated(words: OperatorWords): Words {
  return { ...en, ...words } as Words;
}
