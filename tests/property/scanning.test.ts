import fc from 'fast-check';
import { expect, test } from 'vitest';
import { codeFault } from '@/lib/domain/codes';
import { hasControlCharacter } from '@/lib/domain/scanning/control-characters';
import { readFormat06 } from '@/lib/domain/scanning/format-06';
import { readGs1, readGs1WithLostSeparators } from '@/lib/domain/scanning/gs1-elements';
import { readPayload } from '@/lib/domain/scanning/read-payload';
import { SCANNER_DEFAULT } from '@/lib/domain/scanning/scanner-settings';
import { typeKeys } from '@/tests/support/wedge-keys';

const GS = '\u001d';
const isWx4 = (text: string) => /^WX4C[0-9]{7}$/.test(text);
const value = fc.stringMatching(/^[A-Z0-9./-]{1,18}$/);
const serial = fc.stringMatching(/^WX4C[0-9]{7}$/);
const di = fc.constantFrom('P', '1P', '30P', 'Q', '1T', 'S', '3S', 'V', '1V', 'K', '4K', '10D', '4L', '13E');

test('a format 06 label is read back as it was written, and no payload makes the reader throw', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(di, value), { minLength: 1, maxLength: 8 }), (fields) => {
      const text = `[)>\u001e06${GS}${fields.map(([id, each]) => id + each).join(GS)}\u001e\u0004`;
      const read = readFormat06(text);
      expect(new Set(read?.fields.keys())).toEqual(new Set(fields.map(([id]) => id)));
      for (const [id, each] of fields) expect(read?.fields.get(id)).toContain(each);
    }),
  );
  const pieces = fc.constantFrom(
    '[)>',
    '\u001e',
    '06',
    GS,
    '\u0004',
    '21',
    '10',
    '01',
    'S',
    'P1',
    '9',
    ']d2',
    ' ',
    'é',
  );
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 40 }), (parts) => {
      const read = readPayload(parts.join(''), isWx4);
      if (read.ok) expect(hasControlCharacter(read.code)).toBe(false);
    }),
  );
});

test('a GS1 string is read back; with its separators dropped, never another serial of the plant is taken', () => {
  fc.assert(
    fc.property(serial, value, fc.boolean(), (unit, lot, isSerialFirst) => {
      const parts = isSerialFirst ? [`21${unit}`, `10${lot}`] : [`10${lot}`, `21${unit}`];
      const whole = readPayload(`]d20110614141073464${parts.join(GS)}`, isWx4);
      expect(whole).toMatchObject({ ok: true, code: unit, warnings: [] });
      const dropped = readPayload(`]d20110614141073464${parts.join('')}`, isWx4);
      if (dropped.ok) expect(dropped.code).toBe(unit);
      else expect(dropped.fault).toBe('separators_lost');
    }),
  );
});

test('the straight reading of a GS1 string is one of those with lost separators', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.constantFrom('21', '10', '240'), value), { minLength: 1, maxLength: 3 }),
      (parts) => {
        const text = parts.map(([ai, each]) => ai + each).join(GS);
        const straight = readGs1(text);
        expect(straight).toEqual(parts.map(([ai, each]) => ({ ai, value: each })));
        if (straight !== null) expect(readGs1WithLostSeparators(text)).toContainEqual(straight);
      },
    ),
  );
});

test('a plant code that begins with a letter is scanned as it is printed', () => {
  const code = fc
    .stringMatching(/^[A-Za-zÄÖÜ漢][^\p{C}\p{Z}]{0,30}$/u)
    .filter((text) => codeFault(text) === null);
  fc.assert(
    fc.property(code, (text) => {
      fc.pre(!text.includes('[)>'));
      expect(readPayload(text, () => false)).toMatchObject({ ok: true, code: text });
    }),
  );
});

test('whatever a scanner types fast is one scan, and whatever a person types slowly is none', () => {
  const text = fc.stringMatching(/^[!-~]{3,60}$/);
  fc.assert(
    fc.property(text, fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 1 }), (code, gaps) => {
      const keys = [...code, 'Enter'].map((key, index) => ({ key, afterMs: gaps[index % gaps.length] ?? 5 }));
      expect(typeKeys(keys, SCANNER_DEFAULT).scans).toEqual([code]);
    }),
  );
  fc.assert(
    fc.property(text, fc.array(fc.integer({ min: 51, max: 400 }), { minLength: 1 }), (code, gaps) => {
      const keys = [...code, 'Enter'].map((key, index) => ({
        key,
        afterMs: gaps[index % gaps.length] ?? 60,
      }));
      expect(typeKeys(keys, SCANNER_DEFAULT)).toMatchObject({ scans: [], taken: 0 });
    }),
  );
});
