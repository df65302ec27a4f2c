import { describe, expect, it, test } from 'vitest';
import { z } from 'zod';
import { hasValidCheckDigit } from '@/lib/domain/scanning/check-digit';
import { readFormat06 } from '@/lib/domain/scanning/format-06';
import { readPayload } from '@/lib/domain/scanning/read-payload';
import { readReferenceFile } from '@/tests/support/reference-file';

const NO_PATTERN = (_text: string) => false;
const isWx4 = (text: string) => /^WX4C[0-9]{7}$/.test(text);
const isShort = (text: string) => /^SN[0-9]$/.test(text);

const labelVectors = readReferenceFile('label-vectors.json');
const gs1Vectors = readReferenceFile('gs1-vectors.json');

describe.skipIf(labelVectors === null)('label vectors of ISO/IEC 15434 format 06', () => {
  const vectors = z
    .array(
      z.object({
        name: z.string(),
        text: z.string(),
        fields: z.record(z.string(), z.array(z.string())),
        warnings: z.array(z.string()),
      }),
    )
    .parse(JSON.parse(labelVectors ?? '[]'));
  it('is a list of several', () => expect(vectors.length).toBeGreaterThan(3));
  it.each(vectors)('$name', ({ text, fields, warnings }) => {
    const read = readFormat06(text);
    expect(Object.fromEntries(read?.fields ?? [])).toEqual(fields);
    expect(read?.warnings).toEqual(warnings);
  });
});

describe.skipIf(gs1Vectors === null)('check digits of GS1 keys', () => {
  const { check_digits: keys } = z
    .object({ check_digits: z.object({ valid: z.array(z.string()), invalid: z.array(z.string()) }) })
    .parse(JSON.parse(gs1Vectors ?? '{"check_digits":{"valid":[],"invalid":[]}}'));
  it('has both kinds', () => expect(Math.min(keys.valid.length, keys.invalid.length)).toBeGreaterThan(5));
  it.each(keys.valid)('%s is valid', (key) => expect(hasValidCheckDigit(key)).toBe(true));
  it.each(keys.invalid)('%s is not', (key) => expect(hasValidCheckDigit(key)).toBe(false));
});

// checks.md, GS1 General Specifications (READ): check digits, SSCCs.
test.each([
  ['629104150021', '3'],
  ['730001100001', '7'],
  ['890400021003', '7'],
])('the check digit of %s is %s', (key, digit) => {
  const valid = [...'0123456789'].filter((each) => hasValidCheckDigit(key + each));
  expect(valid).toEqual([digit]);
});

describe('the code that matters', () => {
  const gs = '\u001d';
  const label = (...fields: string[]) => `[)>\u001e06${gs}${fields.join(gs)}\u001e\u0004`;
  const codeOf = (payload: string, isSerial = NO_PATTERN) => {
    const read = readPayload(payload, isSerial);
    return read.ok ? read.code : read.fault;
  };

  it('is the code itself, when nothing else is scanned', () => {
    for (const code of ['WX4C0000123', 'R-1', '4711', '0123', 'CT 18', 'CMD:PASS', '漢字', '1-01', 'L1/1-01'])
      expect(codeOf(code)).toBe(code);
    expect(codeOf(' WX4C0000123 ')).toBe('WX4C0000123');
  });

  it('is the package of a reel label, and its facts are kept', () => {
    const payload = label('3SRL001187', 'PC-10U-0805', '1PCAP-X7R', '1TBC-41187', 'Q4000', 'VKORAL', 'S99');
    expect(readPayload(payload, NO_PATTERN)).toEqual({
      ok: true,
      code: 'RL001187',
      facts: {
        packageId: 'RL001187',
        serial: '99',
        lot: 'BC-41187',
        part: 'C-10U-0805',
        quantity: '4000',
        supplier: 'KORAL',
      },
      warnings: [],
    });
  });

  it('is the serial, else the lot, else the part', () => {
    expect(codeOf(label('SWX4C0000123', '1TL1', 'PWX4'))).toBe('WX4C0000123');
    expect(codeOf(label('1TL1', 'PWX4', 'Q5'))).toBe('L1');
    expect(codeOf(label('PWX4', 'Q5'))).toBe('WX4');
    expect(codeOf(label('Q5', 'K123'))).toBe('no_code');
  });

  it('takes the longest data identifier', () => {
    expect(codeOf(label('30PX', '1PY', 'K1', '4K7'))).toBe('Y');
    expect(codeOf(label('13E3', '3SR1'))).toBe('R1');
  });

  it('reads GS1 strings, marked by a symbology identifier, a separator or a key', () => {
    // EPC Tag Data Standard (READ, CALC): sgtin:0614141.107346.2018 is (01)10614141073464(21)2018.
    expect(codeOf(']d201106141410734642120\u001d1018')).toBe('20');
    expect(codeOf('0110614141073464212018')).toBe('2018');
    expect(codeOf(`${gs}0110614141073464212018`)).toBe('2018');
    expect(codeOf(']d221SN1\u001d10LOT')).toBe('SN1');
    // sscc:0614141.1234567890 is (00)106141412345678908.
    expect(codeOf('00106141412345678908')).toBe('106141412345678908');
    expect(codeOf('00106141412345678907')).toBe('00106141412345678907');
  });

  it('finds where a dropped separator stood by the serial pattern of the plant', () => {
    // checks.md: a scanner that drops GS turns 21SN1 + 10LOT into serial SN110LOT.
    expect(readPayload('21SN110LOT', isShort)).toMatchObject({ code: 'SN1', warnings: ['separator_lost'] });
    expect(readPayload(']d221SN110LOT', NO_PATTERN)).toMatchObject({ code: 'SN110LOT' });
    expect(readPayload('011061414107346410LOT721WX4C0000123', isWx4)).toMatchObject({
      code: 'WX4C0000123',
      facts: { lot: 'LOT7' },
      warnings: ['separator_lost'],
    });
  });

  it('says so when a dropped separator leaves more than one serial', () => {
    const isAny = (text: string) => /^SN[0-9]{1,3}$/.test(text);
    expect(codeOf('21SN11010LOT', isAny)).toBe('separators_lost');
    expect(codeOf('[)>06PTEST1PCAPQ5')).toBe('separators_lost');
  });

  it('takes a serial of the plant as it stands, whatever else it looks like', () => {
    expect(codeOf('0110614141073464', (text) => /^[0-9]{16}$/.test(text))).toBe('0110614141073464');
  });

  it('makes no code of what cannot be one', () => {
    expect(codeOf('')).toBe('no_code');
    expect(codeOf(' \u001d ')).toBe('no_code');
    expect(codeOf('AB\u0002CD')).toBe('unreadable');
  });
});
