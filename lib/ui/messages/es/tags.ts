import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const tags: Translation['tags'] = {
  place: {
    station: 'En una estación',
    stock: 'En almacén',
    container: 'Empacada',
    shipped: 'Enviada',
    returned: 'Devuelta',
    scrapped: 'Desechada',
    unknown: 'Sin ubicación',
  },
  relation: { contains: 'Contiene', formerly: 'Antes', touched: 'En contacto' },
  certainty: { certain: 'Seguro', possible: 'Posible' },
  hold: { open: 'Retenido', released: 'Liberado' },
  result: { pass: 'Pasa', fail: 'Falla' },
  itemKind: {
    reel: 'Carrete',
    lot: 'Lote',
    paste: 'Pasta de soldadura',
    stencil: 'Esténcil',
    squeegee: 'Racleta',
    carrier: 'Portaplacas',
    profile: 'Perfil',
    firmware: 'Firmware',
    fixture: 'Dispositivo',
  },
  labelKind: { unit: 'Unidad', item: 'Artículo', container: 'Contenedor', badge: 'Gafete' },
  holdTarget: { unit: 'Unidad', item: 'Artículo', lot: 'Lote', container: 'Contenedor' },
};
