import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const counts: Translation['counts'] = {
  title: 'Conteos que no cuadran',
  intro:
    'Cada conteo de un carrete se compara con lo que sus unidades usaron desde el conteo anterior. Si la diferencia es mayor que la merma permitida de la parte, probablemente no se escaneó un cambio, y las unidades de ese tiempo son posibles para el carrete de antes y el de después.',
  weighed:
    '{reels, number} {reels, plural, one {carrete comparado} other {carretes comparados}} en {days, number} días, desde {since}: {count, plural, =0 {todos cuadran} one {un conteo no cuadra} other {# conteos no cuadran}}.',
  agree: 'Todos los conteos cuadran con el uso',
  agreeText: 'No parece faltar en el registro ningún cambio de carrete.',
  off: 'No se compara nada',
  offText:
    'Ninguna parte del archivo de planta tiene merma (attrition): la porción de su uso que puede perderse al tomar los componentes. Dé una a las partes y los conteos se comparan.',
  openPlant: 'Abrir la planta',
  reel: 'Carrete',
  part: 'Parte',
  surplus: 'Queda más de lo que su uso explica',
  deficit: 'Queda menos de lo que su uso explica',
  surplusPieces: '{pieces, number, ::.#} piezas de más',
  deficitPieces: '{pieces, number, ::.#} piezas de menos',
  expected: 'Esperado',
  expectedRange: 'de {min, number, ::.} a {max, number, ::.}',
  expectedOne: '{min, number, ::.}',
  found: 'Contado',
  foundAt: '{left, number, ::.} · {time}',
  foundNone: 'Sin conteo desde entonces; sus unidades usaron más de lo que había',
  before: 'Conteo anterior',
  allowed: 'Merma permitida',
  allowedText: '{share, number, percent} de {used, number, ::.} usadas: {pieces, number, ::.#} piezas',
  missed: {
    title: 'Probablemente sin escanear',
    none: 'Ningún carrete vecino lo explica: cuéntelo otra vez o busque una pérdida al tomar los componentes.',
    late: 'El cambio a <other></other> se escaneó demasiado tarde',
    early: 'El cambio a <recorded></recorded> se escaneó demasiado pronto: <other></other> siguió puesto',
    never: '<other></other> estuvo ahí sin escanear',
    unknown:
      'Un carrete desconocido estuvo ahí sin escanear: cuente en el almacén los carretes de esta parte',
    units: '{count, number} {count, plural, one {unidad} other {unidades}}',
    where: '{station}, ranura {slot}',
    show: 'Unidades de ese tiempo',
    used: 'Dónde se usó {item}',
  },
  chart: {
    title: 'Lo que debe quedar de {item} y lo que se contó',
    text: '{before, number, ::.} en el conteo anterior, {expected, number, ::.} esperadas sin merma, {found, number, ::.} contadas.',
    expected: 'esperado',
    counted: 'contado',
    interval: 'sin escanear',
  },
};
