import { createTranslator } from 'use-intl';
import { currentLanguage } from '@/lib/server/language';
import { wordsOf } from '@/lib/ui/messages/words';

/** The words of a page that the server writes itself, in the language of the device that asks. */
export async function pageWords() {
  const language = await currentLanguage();
  return createTranslator({ locale: language, messages: wordsOf(language) });
}
