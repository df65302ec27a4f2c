import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const scanning: Translation['scanning'] = {
  remark: {
    separators_lost:
      'No se leyó: esta etiqueta necesita separadores y el escáner los omite. Configure el escáner para enviar GS (como Ctrl+], por ejemplo) o use la cámara.',
    separator_lost:
      'Leído por el patrón de serie: el escáner omitió un separador. Configúrelo para enviar GS (como Ctrl+], por ejemplo).',
    no_code: 'No se leyó: la etiqueta no nombra paquete, serie, lote ni parte. Escanee otra etiqueta.',
    unreadable: 'No se leyó: el escaneo tiene caracteres que ningún código tiene. Escanee otra vez.',
  },
  camera: {
    title: 'Cámara',
    open: 'Escanear con la cámara',
    close: 'Cerrar la cámara',
    aim: 'Ponga el código dentro del marco',
    light: 'Luz encendida',
    dark: 'Luz apagada',
    trouble: {
      insecure:
        'El navegador solo da la cámara a direcciones https. Abra esta página con https o use un escáner.',
      forbidden:
        'La cámara no está permitida. Permítala para esta página en los ajustes del navegador y ábrala otra vez.',
      missing: 'Este equipo no tiene cámara. Use un escáner o escriba el código.',
      busy: 'La cámara no arranca. Quizá la usa otro programa; ciérrelo e intente de nuevo.',
    },
  },
  device: {
    title: 'Este equipo',
    text: 'Lo que se ajusta aquí lo guarda solo este equipo.',
    language: 'Idioma',
    languageText: 'Cada pantalla de este equipo se muestra en este idioma.',
  },
  settings: {
    title: 'Cómo escribe el escáner',
    prefix: 'Lo que escribe antes de cada código (se quita)',
    suffix: 'Qué termina un escaneo',
    suffixes: { Enter: 'Intro', Tab: 'Tab', pause: 'Nada: una pausa corta' },
    gap: 'Tiempo máximo entre dos caracteres, en milisegundos',
    gapHint:
      'De 20 a 150. Más para un escáner inalámbrico lento; demasiado toma por escaneo lo escrito de prisa.',
    save: 'Guardar',
    saved: 'Guardado en este equipo.',
    bad: 'Entre 20 y 150.',
    try: 'Escanee algo para probar',
    got: 'Código: {code}',
    facts: {
      packageId: 'Paquete',
      serial: 'Serie',
      lot: 'Lote',
      part: 'Parte',
      quantity: 'Cantidad',
      supplier: 'Proveedor',
    },
  },
};
