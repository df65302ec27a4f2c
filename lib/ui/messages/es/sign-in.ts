import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const signIn: Translation['signIn'] = {
  title: 'Iniciar sesión',
  station: {
    title: 'En una estación',
    hint: 'Escanee o escriba su gafete y después su PIN.',
    submit: 'Entrar con PIN',
  },
  desk: {
    title: 'En un escritorio',
    hint: 'Para planeación, calidad y administración.',
    submit: 'Entrar con contraseña',
  },
  badge: 'Gafete',
  pin: 'PIN',
  password: 'Contraseña',
  showPassword: 'Mostrar u ocultar lo escrito',
  keypad: {
    label: 'Teclas numéricas para el PIN',
    erase: 'Borrar el último dígito',
    clear: 'Borrar todo',
    key: 'Dígito {digit}',
  },
  refused: {
    wrong_credentials:
      'El gafete y el PIN o la contraseña no coinciden. Intente de nuevo o pregunte a un administrador.',
    too_many_attempts:
      'Demasiados intentos fallidos. Intente de nuevo en {minutes, plural, one {un minuto} other {# minutos}}.',
    unknown_here:
      'Sin el servidor, esta tableta solo conoce a quienes entraron en ella con su PIN en las últimas dos semanas.',
  },
  signOut: 'Cerrar sesión',
};
