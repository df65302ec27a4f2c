import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const record: Translation['record'] = {
  sending: 'Enviando {count, plural, one {un registro} other {# registros}}…',
  retrying:
    'El servidor no responde. {count, plural, one {Un registro se guarda en este equipo y se envía} other {# registros se guardan en este equipo y se envían}} de nuevo.',
  signed_out:
    'Su sesión terminó. {count, plural, =0 {} one {Un registro se guarda en este equipo. } other {# registros se guardan en este equipo. }}Inicie sesión para seguir.',
  clock_ahead:
    'El reloj de este equipo va adelantado. {count, plural, one {Un registro espera} other {# registros esperan}}: ajuste el reloj.',
  contact: {
    online: 'El servidor responde',
    offline: 'Sin servidor',
    waiting:
      '{count, plural, =0 {nada espera aquí} one {un registro espera aquí} other {# registros esperan aquí}}',
    last: 'último contacto {clock}',
    never: 'sin contacto aún',
  },
  update: { text: 'Hay una versión nueva. No se pierde nada de lo registrado aquí.', take: 'Usarla ahora' },
  signIn: 'Iniciar sesión',
  sendNow: 'Enviar ahora',
  sendingOne: 'Registrando…',
  countDoubt: {
    ask: 'Más que los {known, number} que tenía. ¿Es correcto?',
    save: 'Sí, guardar {quantity, number}',
  },
  fault: {
    empty: 'Esto hace falta.',
    invalid_type: 'Esto hace falta.',
    invalid_value: 'Elija uno de la lista.',
    not_a_number: 'Esto no es un número.',
    too_small: 'Es demasiado pequeño.',
    too_big: 'Es demasiado grande.',
    too_long: 'Es demasiado largo.',
    unprintable: 'Tiene caracteres que no se pueden imprimir.',
    space_at_end: 'Empieza o termina con un espacio.',
    no_condition: 'No dice qué buscar: dé un dato más, por ejemplo un código.',
    no_must: 'Al menos una condición debe decir qué tienen en común las unidades.',
    no_station_there: 'Una estación solo va con el lugar En una estación.',
    not_a_span: 'El tiempo debe terminar después de empezar y durar como máximo 31 días.',
    not_a_time: 'Esto no es una hora con su diferencia respecto a UTC.',
    unknown_key: 'No se puede preguntar nada con este nombre.',
    until_before_since: 'El segundo momento debe ir después del primero.',
    other: 'Esto no se acepta.',
  },
  trouble: {
    unreachable: 'El servidor no responde.',
    signed_out: 'Su sesión terminó.',
    not_permitted: 'Su función no puede ver esto.',
    not_found: 'Aquí no hay tal cosa.',
  },
  tryAgain: 'Intentar de nuevo',
  loading: 'Cargando…',
  problem: {
    title: 'No se registró: {what}',
    titleOf: 'No se registró: {what}, {subject}',
    understood: 'Entendido',
  },
};
