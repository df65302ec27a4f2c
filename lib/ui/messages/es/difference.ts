import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const difference: Translation['difference'] = {
  title: 'Qué cambió',
  link: 'Qué cambió desde…',
  heading: {
    item: 'Dónde se usó el artículo {code}: qué cambió',
    lot: 'Dónde se usó el lote {code}: qué cambió',
    part: 'Dónde se usó la parte {code}: qué cambió',
    station: 'Unidades procesadas en {code}: qué cambió',
    operator: 'Unidades procesadas por {code}: qué cambió',
    time: 'Unidades procesadas en un tiempo: qué cambió',
  },
  form: {
    title: '¿Entre qué dos momentos?',
    since: 'Desde',
    sinceHint: 'Cuando se envió el informe.',
    until: 'Hasta',
    untilHint: 'Vacío: ahora.',
    submit: 'Comparar',
    zone: 'Ambos significan lo que había llegado aquí hasta entonces, según el reloj de {zone}.',
    order: 'El segundo momento debe ir después del primero.',
  },
  back: 'La respuesta de ahora',
  reported: 'La respuesta como se conocía entonces',
  csv: 'CSV de cada cambio',
  ask: {
    title: 'Diga desde cuándo',
    text: 'Dé el momento en que se envió el informe y vea qué unidades entraron en la respuesta o salieron de ella desde entonces, y por qué evento.',
  },
  tooMany: {
    title: 'Demasiadas unidades para comparar',
    text: 'Habría que revisar {units, number} unidades y se pueden {max, number}. Pregunte por un artículo en lugar de un lote o una parte; o tome el archivo CSV de la respuesta como se conocía entonces y el de ahora.',
  },
  size: '{time}: {units, plural, one {# unidad} other {# unidades}} ({certain, number} seguras, {possible, number} posibles)',
  kind: {
    label: 'Cambios',
    joined: 'Entraron',
    left: 'Salieron',
    certainty: 'Más o menos seguras',
    relation: 'Otra relación',
    joinedText: 'No están en el informe. Reténgalas y rastréelas también.',
    leftText: 'Están en el informe y ya no en la respuesta.',
    certaintyText: 'Seguras antes y posibles ahora, o al revés.',
    relationText: 'Tan seguras como antes; cambió contiene, antes o en contacto.',
    units: '{count, plural, one {unidad} other {unidades}}',
  },
  change: {
    joined: 'Entró',
    left: 'Salió',
    certain: 'Ahora segura',
    possible: 'Ahora solo posible',
    relation: 'Otra relación',
  },
  none: {
    title: 'No cambió nada',
    text: 'Cada unidad está en la respuesta como estaba. {late, plural, =0 {Entre los dos momentos no llegó nada que importe aquí.} one {Entre los dos momentos llegó un evento que podía importar y no cambió nada.} other {Entre los dos momentos llegaron # eventos que podían importar y no cambiaron nada.}}',
  },
  events: {
    title: 'Qué evento lo hizo',
    count: '{events, plural, one {un evento} other {# eventos}}, en el orden de llegada',
    arrived: 'Llegó {time}',
    arrivedFrom: 'Llegó {time} del equipo {device}',
    refused: 'Fue rechazado, y solo cambió qué números debe su equipo.',
    about: 'Trata de',
    owing: 'Con él cambiaron los números que debe su equipo.',
    voids: 'Quita:',
    among:
      'Uno de {count, number} eventos que llegaron de {from} a {to}. Son demasiados para distinguirlos de una vez: compare dos momentos más cercanos.',
    amongTitle: 'Sin distinguir',
  },
  units: {
    caption: '{count, plural, one {Cambió una unidad} other {Cambiaron # unidades}}',
    unit: 'Unidad',
    change: 'Cambio',
    before: 'Antes',
    after: 'Después',
    out: 'Fuera de la respuesta',
  },
  listed:
    'Aquí están las primeras {shown, number} de {count, number} unidades cambiadas, por número de serie; el archivo CSV las tiene todas.',
  leavesOut:
    'Lo que dicen los conteos no está en ninguna de las dos respuestas: los carretes de esta parte son demasiados para pesarlos a cada paso. La respuesta de ahora, y la que se conocía entonces, nombran las unidades que son posibles porque los conteos no cuadran.',
};
