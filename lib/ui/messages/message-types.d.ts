import type { Language } from '@/lib/domain/language';
import type { en } from '@/lib/ui/messages/en';

declare module 'use-intl' {
  /** Makes a key that the catalogue does not have a compile error. */
  interface AppConfig {
    Locale: Language;
    Messages: typeof en;
  }
}
