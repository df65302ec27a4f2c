import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { currentLanguage } from '@/lib/server/language';
import { compiledWords } from '@/lib/ui/messages/compiled-words';
import { type Words, wordsOf } from '@/lib/ui/messages/words';

/** The texts of what the server says on a page, in the language of the device that asks. */
export async function pageWords() {
  const language = await currentLanguage();
  return createTranslator({ locale: language, messages: compiledWords(language) });
}

/** The title of a page that is called the same whatever it shows, in the language of the device that asks. */
export function pageTitle(titleOf: (words: Words) => string): () => Promise<Metadata> {
  return async () => ({ title: titleOf(wordsOf(await currentLanguage())) });
}
