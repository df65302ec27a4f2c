import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const labels: Translation['labels'] = {
  title: 'Etiquetas',
  link: 'Etiqueta',
  linkOf: 'Etiqueta de {code}',
  kind: '¿Etiquetas de qué?',
  codes: 'Códigos, uno por renglón',
  codesHint: 'Un solo código puede empezar una serie: sus últimos dígitos aumentan.',
  count: 'Códigos de la serie',
  copies: 'Copias de cada uno',
  skip: 'Lugares ya usados',
  symbol: 'Símbolo',
  symbols: { qr: 'Código QR', datamatrix: 'Data Matrix' },
  stock: 'Se imprime en',
  stocks: {
    'roll-25x10': 'Impresora de etiquetas, 25 × 10 mm',
    'roll-50x25': 'Impresora de etiquetas, 50 × 25 mm',
    'roll-100x50': 'Impresora de etiquetas, 100 × 50 mm',
    'sheet-a4': 'Hojas A4',
    'sheet-letter': 'Hojas carta',
  },
  stockFields: {
    widthMm: 'Ancho, mm',
    heightMm: 'Alto, mm',
    dpi: 'Puntos por pulgada: 203, 300, 600',
    rows: 'Renglones',
    columns: 'Columnas',
    marginTopMm: 'Margen superior, mm',
    marginLeftMm: 'Margen izquierdo, mm',
    rowGapMm: 'Entre renglones, mm',
    columnGapMm: 'Entre columnas, mm',
  },
  show: 'Mostrarlas',
  none: 'Escriba o escanee los códigos y muestre las etiquetas.',
  badCode: 'Esto no es un código, o no se puede numerar: {code}',
  stockRefused: 'Estas medidas no dejan una etiqueta de al menos 5 mm. Se muestran las usuales.',
  dense:
    'Los módulos miden menos de 0.25 mm: muchos escáneres no los leerán. Use una etiqueta mayor, un código más corto o Data Matrix.',
  problem: {
    symbol_does_not_fit: '{code}: el símbolo no cabe en esta etiqueta. Use una mayor o Data Matrix.',
    text_does_not_fit: '{code}: el código no se podría leer en esta etiqueta. Use una mayor.',
    letters_missing:
      '{code}: la fuente de etiquetas no tiene {letters}. Cambie el texto; en un gafete, el nombre en el archivo de planta.',
  },
  preview: 'En tamaño real',
  print: 'Imprimir',
  total: '{labels, plural, one {# etiqueta} other {# etiquetas}}',
  before:
    '{count, plural, one {Este código ya tiene} other {# códigos ya tienen}} etiqueta: {codes}. Dos etiquetas con un mismo código pueden acabar en dos cosas.',
  reason: '¿Por qué otra vez?',
  pdf: 'Archivo PDF',
  browser: 'Imprimir desde aquí',
  sending: 'Registrando…',
  recorded: 'Registrado en el historial.',
  failed: 'El servidor no respondió y no se imprimió nada. Intente de nuevo.',
};
