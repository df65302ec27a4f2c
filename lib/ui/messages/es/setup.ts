import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const setup: Translation['setup'] = {
  title: 'El primer administrador',
  hint: 'Este enlace sirve una vez. El administrador da a los demás su gafete, función y PIN.',
  badge: 'Gafete',
  badgeHint: 'Como está impreso o codificado en el gafete, por ejemplo op-101.',
  name: 'Nombre',
  password: 'Contraseña',
  passwordHint: 'Al menos 12 caracteres, para un escritorio.',
  pin: 'PIN',
  pinHint: 'De cuatro a ocho dígitos, para una estación.',
  submit: 'Crear administrador',
  closed: {
    title: 'Este enlace no sirve',
    text: 'Ya se usó, tiene más de un día, o se imprimió uno nuevo. Al reiniciar el servidor se imprime uno nuevo mientras no haya administrador.',
    signIn: 'Ir a iniciar sesión',
  },
};
