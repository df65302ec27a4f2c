import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const shell: Translation['shell'] = {
  demo: 'Demostración · una planta inventada; nada de esto es real',
  demoLabel: 'Demostración',
  skip: 'Ir al contenido',
  navigation: 'Pantallas',
  menu: { open: 'Abrir el menú', close: 'Cerrar el menú' },
  screens: {
    floor: 'Piso',
    station: 'Estación',
    changeover: 'Cambio',
    items: 'Recepción',
    counts: 'Revisar conteos',
    pack: 'Empaque y envío',
    holds: 'Retenciones',
    exceptions: 'Excepciones',
    devices: 'Equipos',
    returns: 'Devoluciones',
    trace: 'Rastreo',
    plant: 'Planta',
    people: 'Personas',
  },
  openCount: '{count, plural, one {una abierta} other {# abiertas}}',
  signedInAs: 'Sesión de {badge}, {role}',
  thisDevice: 'Este equipo: escáner e idioma',
  scheme: { label: 'Colores', light: 'Claro', dark: 'Oscuro', auto: 'Como el equipo' },
};
