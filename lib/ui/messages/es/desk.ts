import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const desk: Translation['desk'] = {
  close: 'Cerrar',
  cancel: 'Cancelar',
  reason: 'Motivo',
  disposition: 'Disposición',
  dispositionHint: 'Qué se hace con ello: usar como está, retrabajo, devolver al proveedor, desecho…',
  refused: 'No se registró',
};
