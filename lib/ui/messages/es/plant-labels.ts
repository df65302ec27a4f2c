import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const plantLabels: Translation['plantLabels'] = {
  badge: 'Ese es el gafete {badge}. Para cambiar de persona, pulse primero Cambiar persona.',
  station: 'Esa es la etiqueta de la estación {station}.',
  slot: 'Esa es la ranura {slot}{has_station, select, no {} other { de {station}}}.',
  missingInner: 'Aún no está dentro: {product} en {position}',
  emptyPosition: '{position} está vacía: se quitó un componente y no se montó otro.',
  heldInside:
    'Cuidado: {unit} contiene {kind, select, lot {el lote} other {el artículo}} {id}, que está retenido. La unidad misma no lo está; pregunte a calidad. Motivo: {reason}',
};
