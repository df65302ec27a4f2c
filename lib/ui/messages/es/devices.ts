import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const devices: Translation['devices'] = {
  title: 'Equipos',
  asOf: 'Al {time}',
  summary:
    '{owing, plural, =0 {Ningún equipo debe eventos} one {Un equipo debe eventos} other {# equipos deben eventos}}{lost, plural, =0 {} one {, uno está perdido} other {, # están perdidos}}',
  count: '{total, plural, one {Un equipo} other {# equipos}}',
  shown:
    'Se muestran los {count, number} que más importan: los que deben, después los perdidos, después los más recientes.',
  hint: 'Cada equipo numera sus eventos desde 1 sin huecos; un número que falta es un evento que sigue en el equipo o se perdió con él. Mientras falte alguno, ninguna respuesta está completa. Lo que un equipo hizo después de su último número no se puede ver desde aquí.',
  columns: {
    device: 'Equipo',
    state: 'Estado',
    owes: 'Falta',
    since: 'Desde',
    lastSeen: 'Última señal',
    where: 'Último lugar',
    doubt: 'Reloj: margen',
    actions: 'Decidir',
  },
  state: { owing: 'Debe eventos', lost: 'Perdido', quiet: 'Callado', recent: 'En orden' },
  missing: '{count, plural, one {un evento} other {# eventos}}: número {numbers}.',
  after: 'Después del número {highest} nadie sabe.',
  nothing: 'nada hasta el número {highest}',
  spoken: 'Ha enviado eventos desde entonces: no está perdido.',
  never: 'nunca',
  doubt: '{doubt}',
  doubtSmall: 'menos de un segundo',
  doubtUnknown: 'no se sabe',
  retire: {
    label: 'Dar de baja',
    labelOf: 'Dar de baja {device}',
    title: '¿Dar de baja {device} como perdido?',
    text: 'Solo para un equipo que nunca volverá: robado, roto, borrado. Si aún enciende, conéctelo y envía lo que debe. Desde ahora toda respuesta dice, de forma definitiva, que se perdieron eventos de este equipo. Si vuelve a hablar, sus eventos se registran de todos modos.',
    confirm: 'Dar de baja como perdido',
  },
  bringBack: {
    label: 'No perdido',
    labelOf: '{device} no está perdido',
    title: '¿{device} no está perdido después de todo?',
    text: 'Esto anula su baja. Lo que aún falta vuelve a contar como debido.',
    confirm: 'No está perdido',
  },
};
