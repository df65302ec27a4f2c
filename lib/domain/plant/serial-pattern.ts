import { RE2JS } from 're2js';
import type { PlantFile } from '@/lib/domain/plant/plant-file';

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

/** Whether a pattern matches the whole of a text, anchored or not. */
export function isWholeSerial(pattern: string, text: string): boolean {
  return compileSerialPattern(pattern)?.matcher(text).matches() ?? false;
}

/** Most patterns that go to a page with it. */
const PATTERNS_MAX = 200;

/** The distinct serial patterns of a plant, at most 200. */
export function serialPatternsOf({ products = [] }: Pick<PlantFile, 'products'>): string[] {
  return [...new Set(products.flatMap(({ serialPattern }) => serialPattern ?? []))].slice(0, PATTERNS_MAX);
}
