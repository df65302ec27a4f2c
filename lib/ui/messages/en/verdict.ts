/** Words of the go / no-go panel. */
export const verdict = {
  go: { word: 'GO', text: 'Go: work on it.' },
  stop: { word: 'STOP', text: 'No-go: do not work on it.' },
  caution: { word: 'CHECK', text: 'Recorded, but a rule is broken. The unit is on hold.' },
  scan: { word: 'SCAN', text: 'Scan the next one.' },
  wait: { word: 'WAIT', text: 'Another unit is in work.' },
  busy: { word: 'WAIT', text: 'Asking…' },
  reasons: 'Reasons',
  next: 'Next: {operation}, step {step}',
} as const;
