import type { en } from '@/lib/ui/messages/en';

/** Languages that a device can show, by their tags (BCP 47), each named in itself. */
export const LANGUAGES = { en: 'English', es: 'Español', 'zh-Hant': '繁體中文' } as const;
export type Language = keyof typeof LANGUAGES;

/** The cookie in which a device keeps its language: pages are made in it on the server. */
export const LANGUAGE_COOKIE = 'reelkin_language';

/** What an operator sees; everything else is in English in every language. */
export const OPERATOR_NAMESPACES = [
  'shell',
  'tags',
  'events',
  'refusals',
  'verdict',
  'scanBox',
  'scanning',
  'labels',
  'signIn',
  'notPermitted',
  'time',
  'changeover',
  'clock',
  'holds',
  'items',
  'offline',
  'pack',
  'record',
  'returns',
  'station',
  'wrong',
] as const;
type OperatorNamespace = (typeof OPERATOR_NAMESPACES)[number];

type Worded<T> = { readonly [K in keyof T]: T[K] extends string ? string : Worded<T[K]> };

/** A translation: the same keys as in English. */
export type OperatorWords = { readonly [N in OperatorNamespace]: Worded<(typeof en)[N]> };

/** The language that a cookie names; English for everything else. */
export function readLanguage(value: string | undefined): Language {
  return value === 'es' || value === 'zh-Hant' ? value : 'en';
}
