import { cookies } from 'next/headers';
import { LANGUAGE_COOKIE, type Language, readLanguage } from '@/lib/domain/language';

/** The language of the device that asks. */
export async function currentLanguage(): Promise<Language> {
  return readLanguage((await cookies()).get(LANGUAGE_COOKIE)?.value);
}
