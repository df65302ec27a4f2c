import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const clock: Translation['clock'] = {
  no_contact:
    'Este equipo aún no ha alcanzado el servidor y no sabe cuánto se desvía su reloj. Lo que se registre ahora lleva la mayor duda sobre su hora.',
  set: 'El reloj de este equipo se {way, select, back {atrasó} other {adelantó}} {by} mientras no había servidor. {isWide, select, yes {No se puede decir cuándo pasan las cosas hasta que el servidor responda.} other {Las horas de ahora son correctas con un margen de {doubt}.}}',
  doubtful:
    '{isWide, select, yes {No se puede decir cuándo pasan las cosas hasta que el servidor responda: el reloj de este equipo se atrasó sin que nadie lo viera.} other {Las horas de ahora solo son correctas con un margen de {doubt}, hasta que el servidor responda.}}',
  wrong:
    'El reloj de este equipo va {by} {way, select, back {atrasado} other {adelantado}}. Aun así, lo que se registra lleva la hora correcta.',
};
