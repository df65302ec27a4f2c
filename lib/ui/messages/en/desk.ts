/** Words of the dialogs in which a person at a desk records a decision. */
export const desk = {
  close: 'Close',
  cancel: 'Cancel',
  reason: 'Reason',
  disposition: 'Disposition',
  dispositionHint: 'What is done with it: use as is, rework, return to supplier, scrap …',
  refused: 'Not recorded',
} as const;
