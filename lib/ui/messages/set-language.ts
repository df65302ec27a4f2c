import { LANGUAGE_COOKIE, type Language } from '@/lib/domain/language';

const YEARS_10_S = 10 * 366 * 24 * 3600;

/** Keeps the language of this device and shows the page in it. */
export function setLanguage(language: Language): void {
  // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store is not in every browser of a floor
  document.cookie = `${LANGUAGE_COOKIE}=${language}; path=/; max-age=${YEARS_10_S}; samesite=lax`;
  window.location.reload();
}
