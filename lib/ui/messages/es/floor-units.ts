import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const floorUnits: Translation['floorUnits'] = {
  title: 'Unidades en el piso',
  back: 'Piso',
  count: '{count, plural, =0 {Ninguna unidad} one {una unidad} other {# unidades}}',
  station: 'en {station}',
  allStations: 'Todas las estaciones',
  places: 'Lugar',
  troubles: 'Qué les pasa',
  trouble: {
    all: 'Todas',
    failed: 'Con falla abierta',
    held: 'En retención',
    unsigned: 'Sin firma',
  },
  unsigned: 'Sin firmar',
  columns: { unit: 'Unidad', product: 'Producto', where: 'Dónde', why: 'Por qué', since: 'Hace' },
  pages: 'Página {page, number} de {pages, number}',
  next: 'Página siguiente',
  previous: 'Página anterior',
  list: 'Lista: {count, number} {what}',
  doneList: 'Lista: {count, number} en {station} en la última hora',
  waitingAll: 'Todas las unidades en estaciones',
  unsignedAll: 'Unidades en almacén sin firma',
};
