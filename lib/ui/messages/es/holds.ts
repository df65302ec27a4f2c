import type { OperatorWords } from '@/lib/ui/messages/operator-words';

/** See the English words of the same name. */
export const holds: OperatorWords['holds'] = {
  title: 'Retenciones',
  count:
    '{count, plural, =0 {Nada está retenido} one {Una retención abierta} other {# retenciones abiertas}}',
  shown: 'Se muestran las {count, number} más antiguas.',
  none: 'Nada está retenido. Lo retenido nunca pasa, ni se empaca ni se envía.',
  age: 'desde hace {age}',
  placedBy: 'por {badge}',
  automatic: 'puesta por el control de paso',
  filter: 'Mostrar',
  all: 'Todas',
  place: 'Poner retención',
  release: 'Liberar',
  releaseOf: 'Liberar la retención de {target}',
  reasonOf: { attempts_exhausted: 'Falló demasiadas veces en un paso' },
  form: {
    title: 'Poner una retención',
    kind: '¿Sobre qué?',
    target: { unit: 'Unidad', item: 'Artículo', lot: 'Lote', container: 'Contenedor' },
    id: 'Código',
    reason: 'Motivo',
    submit: 'Poner la retención',
    cancel: 'Cancelar',
    done: '{target} queda retenido.',
    stopped: 'No pasa: {target} no quedó retenido.',
  },
  releasing: {
    title: 'Liberar la retención de {target}',
    why: 'Retenido porque: {reason}',
    disposition: 'Disposición',
    dispositions: {
      'use-as-is': 'Usar como está',
      rework: 'Retrabajo',
      'return-to-supplier': 'Devolver al proveedor',
      scrap: 'Desecho',
    },
    usual: 'Disposiciones usuales',
    reason: 'Motivo',
    scrapHint: 'Liberar no desecha: después registre el desecho o retire el artículo.',
    submit: 'Liberar',
    cancel: 'Cancelar',
    done: 'La retención de {target} se liberó.',
    stopped: 'No pasa: la retención de {target} no se liberó.',
  },
};
