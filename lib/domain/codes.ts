import { z } from 'zod';

/** Longest code in characters (Unicode code points), from the wire contract. */
export const CODE_LENGTH_MAX = 64;
/** Longest free text in characters (Unicode code points), from the wire contract. */
export const TEXT_LENGTH_MAX = 2000;

// Control, format, surrogate and private-use characters, line and paragraph separators: never printable.
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/u;
const SPACE_AT_AN_END = /^\p{Zs}|\p{Zs}$/u;
// The same for documents and forms, as a JSON Schema says it (ECMA-262 with the u flag).
const CODE_PATTERN = '^(?!\\p{Zs})[^\\p{Cc}\\p{Cf}\\p{Cs}\\p{Co}\\p{Zl}\\p{Zp}]+(?<!\\p{Zs})$';
const TEXT_PATTERN = '^[^\\u0000\\p{Cs}]*$';

/** Says what is wrong with a code, or null when it is 1 to 64 printable characters without a space at either end. */
export function codeFault(value: string): 'empty' | 'too_long' | 'unprintable' | 'space_at_end' | null {
  if (value.length === 0) return 'empty';
  // Two UTF-16 units at most for a character: a cheap bound before the string is walked.
  if (value.length > 2 * CODE_LENGTH_MAX || [...value].length > CODE_LENGTH_MAX) return 'too_long';
  if (UNPRINTABLE.test(value)) return 'unprintable';
  if (SPACE_AT_AN_END.test(value)) return 'space_at_end';
  return null;
}

const CODE_FAULT_DETAIL = {
  empty: 'A code needs at least one character.',
  too_long: `A code has at most ${CODE_LENGTH_MAX} characters.`,
  unprintable: 'A code has printable characters only.',
  space_at_end: 'A code has no space at either end.',
} as const;

/** A code of anything identified: unit, item, container, station, slot, badge, lot. */
export const codeSchema = z
  .string()
  .check((context) => {
    const fault = codeFault(context.value);
    if (fault === null) return;
    context.issues.push({
      code: 'custom',
      input: context.value.slice(0, CODE_LENGTH_MAX),
      message: CODE_FAULT_DETAIL[fault],
      params: { code: fault },
    });
  })
  .meta({
    minLength: 1,
    maxLength: CODE_LENGTH_MAX,
    pattern: CODE_PATTERN,
    description: 'Printable, no space at either end.',
  });

function textSchemaFrom(lengthMin: 0 | 1) {
  return z
    .string()
    .check((context) => {
      const text = context.value;
      const fault =
        text.length < lengthMin
          ? { code: 'empty', message: 'A text is needed here.' }
          : text.length > 2 * TEXT_LENGTH_MAX || [...text].length > TEXT_LENGTH_MAX
            ? { code: 'too_long', message: `A text has at most ${TEXT_LENGTH_MAX} characters.` }
            : text.includes('\u0000') || !text.isWellFormed()
              ? { code: 'unprintable', message: 'A text cannot hold NUL or half a character.' }
              : null;
      if (fault === null) return;
      context.issues.push({
        code: 'custom',
        input: text.slice(0, CODE_LENGTH_MAX),
        message: fault.message,
        params: { code: fault.code },
      });
    })
    .meta({ minLength: lengthMin, maxLength: TEXT_LENGTH_MAX, pattern: TEXT_PATTERN });
}

/** Free text, at most 2,000 characters; may be empty. */
export const textSchema = textSchemaFrom(0);
/** Free text that must say something: a reason, a meaning. */
export const statementSchema = textSchemaFrom(1);
