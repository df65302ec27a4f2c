/** Words of the box that a scanner types into. */
export const scanBox = {
  submit: 'Enter',
  keyboard: 'Keyboard of the screen',
} as const;
