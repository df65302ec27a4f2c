import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const verdict: Translation['verdict'] = {
  go: { word: 'PASA', text: 'Pasa: puede trabajar en ella.' },
  stop: { word: 'ALTO', text: 'No pasa: no trabaje en ella.' },
  caution: { word: 'REVISAR', text: 'Registrado, pero no cumple una regla. La unidad queda retenida.' },
  scan: { word: 'ESCANEAR', text: 'Escanee la siguiente.' },
  wait: { word: 'ESPERE', text: 'Hay otra unidad en trabajo.' },
  busy: { word: 'ESPERE', text: 'Preguntando…' },
  reasons: 'Motivos',
  next: 'Siguiente: {operation}, paso {step}',
};
