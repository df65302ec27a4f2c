/** Languages that a device can show, by their tags (BCP 47), each named in itself. */
export const LANGUAGES = { en: 'English', es: 'Español', 'zh-Hant': '繁體中文' } as const;
export type Language = keyof typeof LANGUAGES;

/** The cookie in which a device keeps its language: pages are made in it on the server. */
export const LANGUAGE_COOKIE = 'reelkin_language';

/** The language that a cookie names; English for everything else. */
export function readLanguage(value: string | undefined): Language {
  return value === 'es' || value === 'zh-Hant' ? value : 'en';
}
