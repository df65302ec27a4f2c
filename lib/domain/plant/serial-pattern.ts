import { RE2JS } from 're2js';

/** Longest serial pattern in characters. */
export const SERIAL_PATTERN_LENGTH_MAX = 500;

const compiled = new Map<string, RE2JS | null>();

/**
 * Compiles a serial pattern, or gives null when it is not one.
 * RE2 syntax runs in time linear in the serial, so no plant file can hang a server or a tablet.
 */
export function compileSerialPattern(pattern: string): RE2JS | null {
  const known = compiled.get(pattern);
  if (known !== undefined) return known;
  let expression: RE2JS | null;
  try {
    expression = RE2JS.compile(pattern);
  } catch {
    expression = null;
  }
  if (compiled.size > 1000) compiled.clear();
  compiled.set(pattern, expression);
  return expression;
}

/** Whether a serial is one that the pattern allows; a pattern not anchored with ^ and $ may match a part. */
export function matchesSerialPattern(pattern: string, serial: string): boolean {
  return compileSerialPattern(pattern)?.matcher(serial).find() ?? false;
}
