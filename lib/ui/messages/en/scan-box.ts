/** Words of the box that a scanner types into. */
export const scanBox = {
  submit: 'Enter',
  keyboard: 'Show the keyboard of the screen',
} as const;
