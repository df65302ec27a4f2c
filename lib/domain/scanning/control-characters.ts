/** Ends an element of a GS1 string and a field of an ISO/IEC 15434 record. */
export const GS = '\u001d';
/** Ends a record of an ISO/IEC 15434 message. */
export const RS = '\u001e';
/** Ends an ISO/IEC 15434 message. */
export const EOT = '\u0004';

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u001f\u007f]/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const CONTROLS = /[\u0000-\u001f\u007f]/g;

/** Whether a text holds a character that no printed code has. */
export function hasControlCharacter(text: string): boolean {
  return CONTROL.test(text);
}

/** A text without them: what a field shows of it. */
export function withoutControls(text: string): string {
  return text.replace(CONTROLS, '');
}
