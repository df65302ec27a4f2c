import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const wrong: Translation['wrong'] = {
  notFound: {
    title: 'No existe esa página',
    text: 'La dirección no lleva a ninguna parte. Si estaba impresa como código, escanéela en la casilla de rastreo.',
    start: 'Ir al piso',
    trace: 'Ir a rastreo',
  },
  failed: {
    title: 'Algo salió mal aquí',
    text: 'Lo registrado está a salvo. Intente de nuevo; si vuelve a pasar, dé este número a un administrador:',
    noDigest: 'Lo registrado está a salvo. Intente de nuevo; si vuelve a pasar, avise a un administrador.',
    again: 'Intentar de nuevo',
    start: 'Ir al piso',
  },
};
