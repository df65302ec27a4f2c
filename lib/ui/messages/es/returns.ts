import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const returns: Translation['returns'] = {
  title: 'Devoluciones',
  scan: 'Escanee la unidad devuelta',
  ready: 'Escanee la unidad que regresó.',
  looking: 'Buscando {code}…',
  unanswered: 'Sin respuesta sobre {code}. Escanéelo otra vez.',
  unknown: 'No pasa: la unidad {code} nunca se inició.',
  form: {
    title: 'Recibir {unit} como devolución',
    customer: 'Cliente',
    reference: 'Su referencia (opcional)',
    symptom: 'Síntoma o código de error (opcional)',
    submit: 'Recibir la devolución',
    cancel: 'Otra unidad',
  },
  done: '{unit} se recibió como devolución.',
  stopped: 'No pasa: la devolución de {unit} no se registró.',
  toUnit: 'Ver toda la vida de {unit}',
  about: {
    title: 'Lo que se sabe de {unit}',
    product: 'Producto',
    place: 'Dónde estaba',
    shipment: 'Envío',
    customer: 'Cliente',
    signed: 'Firmada',
    holds: 'Retenida',
    inside: 'Dentro de',
    failure: 'Falla abierta',
    yes: 'Sí',
    no: 'No',
    nothing: '–',
  },
  notShipped:
    'El registro no dice que {unit} se haya enviado. Revise la etiqueta; aun así se puede recibir la devolución.',
};
