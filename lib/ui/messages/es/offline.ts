import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const offline: Translation['offline'] = {
  opening: 'Abriendo…',
  needsServer: {
    title: 'Sin servidor',
    text: 'Esta pantalla necesita el servidor, que no responde. Una estación sigue sin él.',
    again: 'Intentar de nuevo',
    station: 'Ir a la estación',
  },
  signIn: {
    title: '¿Quién trabaja aquí?',
    text: 'El servidor no responde. Esta tableta deja entrar a quien inició sesión en ella hace poco.',
  },
};
