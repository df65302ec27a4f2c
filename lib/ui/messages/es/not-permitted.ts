import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const notPermitted: Translation['notPermitted'] = {
  title: 'Su función no puede abrir esto',
  text: 'Su sesión es de {badge}, {role}. Alguien con otra función puede hacerlo, o un administrador puede cambiar la suya.',
  home: 'Volver al inicio',
};
