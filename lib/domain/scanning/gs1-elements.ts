import { type ElementFormat, identifierAt } from '@/lib/domain/scanning/application-identifiers';
import { hasValidCheckDigit } from '@/lib/domain/scanning/check-digit';
import { GS } from '@/lib/domain/scanning/control-characters';

/** One element of a GS1 string: application identifier and value. */
export type Gs1Element = { ai: string; value: string };

/** Most readings that are looked at when separators may have been lost. */
const READINGS_MAX = 2000;
const DIGITS = /^[0-9]+$/;
const PRINTABLE = /^[!-~]+$/;

/** The elements of a GS1 string, which a variable one ends with GS; null when the text is none. */
export function readGs1(text: string): Gs1Element[] | null {
  const elements: Gs1Element[] = [];
  for (const segment of segmentsOf(text)) {
    let rest = segment;
    while (rest !== '') {
      const taken = takeElement(rest, rest.length);
      if (taken === null) return null;
      elements.push(taken.element);
      rest = taken.rest;
    }
  }
  return elements.length === 0 ? null : elements;
}

/**
 * Every way to read a GS1 string of which the scanner may have dropped separators: a variable element may end
 * anywhere. At most 2,000 of them; the first is that of `readGs1`, where there is one.
 */
export function readGs1WithLostSeparators(text: string): Gs1Element[][] {
  let readings: Gs1Element[][] = [[]];
  for (const segment of segmentsOf(text)) {
    const ofSegment = readingsOf(segment, READINGS_MAX);
    readings = readings
      .flatMap((before) => ofSegment.map((after) => [...before, ...after]))
      .slice(0, READINGS_MAX);
  }
  return readings.filter((elements) => elements.length > 0);
}

function segmentsOf(text: string): string[] {
  return text.split(GS).filter((segment) => segment !== '');
}

function readingsOf(segment: string, limit: number): Gs1Element[][] {
  if (segment === '') return [[]];
  const found = identifierAt(segment);
  if (found === null) return [];
  const { ai, format } = found;
  const readings: Gs1Element[][] = [];
  const longest = Math.min(segment.length - ai.length, format.lengthMax);
  for (let length = longest; length >= format.lengthMin; length -= 1) {
    const taken = takeElement(segment, ai.length + length);
    if (taken === null) continue;
    for (const after of readingsOf(taken.rest, limit - readings.length)) {
      readings.push([taken.element, ...after]);
      if (readings.length >= limit) return readings;
    }
  }
  return readings;
}

/** Takes the element at the beginning of a text; a variable one ends at `end`, a predefined one by its own length. */
function takeElement(text: string, end: number): { element: Gs1Element; rest: string } | null {
  const found = identifierAt(text);
  if (found === null) return null;
  const { ai, format } = found;
  const valueEnd = format.isPredefined ? ai.length + format.lengthMax : end;
  const value = text.slice(ai.length, valueEnd);
  return fits(value, format) ? { element: { ai, value }, rest: text.slice(valueEnd) } : null;
}

function fits(value: string, { lengthMin, lengthMax, digitsOnly, hasCheckDigit }: ElementFormat): boolean {
  if (value.length < lengthMin || value.length > lengthMax) return false;
  if (!(digitsOnly ? DIGITS : PRINTABLE).test(value)) return false;
  return !hasCheckDigit || hasValidCheckDigit(value);
}
