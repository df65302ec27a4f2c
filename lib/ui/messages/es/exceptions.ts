import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const exceptions: Translation['exceptions'] = {
  title: 'Excepciones',
  summary:
    '{total, plural, =0 {No hay nada abierto} one {Un evento no cumplió una regla y espera a calidad} other {# eventos no cumplieron una regla y esperan a calidad}}',
  shown: 'Se muestran los primeros {count, number} que llegaron.',
  hint: 'Pasó aunque una regla lo impedía: sin el servidor, o en una máquina que solo informa. Está registrado y retiene su unidad hasta que alguien libere la retención, calidad lo resuelva aquí o llegue el evento que falta y lo corrija.',
  holds: 'Retiene su unidad',
  released: 'Retención liberada',
  arrived: 'llegó',
  columns: {
    what: 'Qué pasó',
    broken: 'Regla que no cumplió',
    where: 'Dónde y quién',
    when: 'Cuándo',
    cleared: 'Resuelta',
    actions: 'Decidir',
  },
  device: 'equipo {device}',
  cleared: 'Resueltas hace poco',
  clearedBy: '{by}: {reason}',
  clear: {
    label: 'Resolver',
    labelOf: 'Resolver {subject}: {event}',
    title: '¿Resolver esta excepción?',
    text: 'El evento queda como está, con lo que tenía en contra. La retención que causó termina; las demás siguen. Diga qué encontró.',
    confirm: 'Resolverla',
  },
  reopen: {
    label: 'Abrir otra vez',
    labelOf: 'Abrir otra vez {subject}: {event}',
    title: '¿Abrir otra vez esta excepción?',
    text: 'Esto anula la resolución. La retención que terminó vuelve a valer.',
    confirm: 'Abrirla otra vez',
  },
};
