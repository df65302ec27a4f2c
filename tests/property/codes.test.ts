import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  CODE_LENGTH_MAX,
  codeFault,
  codeSchema,
  statementSchema,
  TEXT_LENGTH_MAX,
  textSchema,
} from '@/lib/domain/codes';

const UNPRINTABLE = [
  '\u0000',
  '\u0007',
  '\n',
  '\t',
  '\u007f',
  '\u0085',
  '\u00ad',
  '\u200b',
  '\u200f',
  '\u202e',
  '\u2028',
  '\u2066',
  '\ufeff',
  '\ud83d',
  '\udc00',
  '\ue000',
];
const SPACES = [' ', '\u00a0', '\u2003', '\u3000'];
const printable = fc.string({
  unit: fc.constantFrom(...'AZaz09-_./#%"\'\\<>&;=', 'é', 'ß', '漢', '😀', 'e\u0301'.charAt(1)),
  minLength: 1,
  maxLength: CODE_LENGTH_MAX,
});

/** What a JSON Schema pattern says, as a validator that follows ECMA-262 runs it. */
function patternOf(schema: z.ZodType): RegExp {
  const { pattern } = z.object({ pattern: z.string() }).parse(z.toJSONSchema(schema));
  return new RegExp(pattern, 'u');
}

describe('codes', () => {
  it('are any 1 to 64 printable characters, counted as people count them', () => {
    fc.assert(
      fc.property(printable, (code) => {
        expect(codeFault(code)).toBeNull();
      }),
    );
    expect(codeFault('😀'.repeat(CODE_LENGTH_MAX))).toBeNull();
    expect(codeFault('😀'.repeat(CODE_LENGTH_MAX + 1))).toBe('too_long');
    expect(codeFault('')).toBe('empty');
  });

  it('may have a space inside and none at either end', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SPACES), (space) => {
        expect(codeFault(`A${space}B`)).toBeNull();
        for (const code of [`${space}A`, `A${space}`, space]) expect(codeFault(code)).toBe('space_at_end');
      }),
    );
  });

  it('hold nothing that is not printed, wherever it stands', () => {
    fc.assert(
      fc.property(fc.constantFrom(...UNPRINTABLE), fc.nat({ max: 5 }), (character, at) => {
        const code = `${'A'.repeat(at)}${character}${'B'.repeat(5 - at)}`;
        expect(codeFault(code)).toBe('unprintable');
      }),
    );
  });

  it('are told apart in no time, however long the text', () => {
    const startMs = performance.now();
    expect(codeFault('W'.repeat(10_000_000))).toBe('too_long');
    expect(codeSchema.safeParse('W'.repeat(10_000_000)).success).toBe(false);
    expect(performance.now() - startMs).toBeLessThan(500);
  });

  it('are the same for the schema and for the document that is made from it', () => {
    const pattern = patternOf(codeSchema);
    const piece = fc.constantFrom('A', '0', 'é', '😀', ...SPACES, ...UNPRINTABLE);
    fc.assert(
      fc.property(fc.string({ unit: piece, minLength: 1, maxLength: 8 }), (text) => {
        expect(pattern.test(text)).toBe(codeSchema.safeParse(text).success);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('free text', () => {
  it('takes line breaks and any language, but neither NUL nor half a character', () => {
    const piece = fc.constantFrom('a', '\n', '\t', ' ', '漢', '😀', '\u202e', '\u0000', '\ud83d', '\udc00');
    const pattern = patternOf(textSchema);
    fc.assert(
      fc.property(fc.string({ unit: piece, maxLength: 10 }), (text) => {
        const isFine = !text.includes('\u0000') && text.isWellFormed();
        expect(textSchema.safeParse(text).success).toBe(isFine);
        expect(pattern.test(text)).toBe(isFine);
        expect(statementSchema.safeParse(text).success).toBe(isFine && text.length > 0);
      }),
      { numRuns: 1000 },
    );
  });

  it('has at most 2,000 characters', () => {
    expect(textSchema.safeParse('😀'.repeat(TEXT_LENGTH_MAX)).success).toBe(true);
    expect(textSchema.safeParse('😀'.repeat(TEXT_LENGTH_MAX + 1)).success).toBe(false);
  });
});
