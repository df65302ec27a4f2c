import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const scanBox: Translation['scanBox'] = {
  submit: 'Intro',
  keyboard: 'Teclado en pantalla',
};
