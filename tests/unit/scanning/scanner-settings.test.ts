import { expect, it } from 'vitest';
import { bareCode } from '@/lib/domain/scanning/bare-code';
import { isRepeatedScan, SAME_SCAN_MS } from '@/lib/domain/scanning/repeated-scan';
import { readScannerSettings, SCANNER_DEFAULT } from '@/lib/domain/scanning/scanner-settings';

it('keeps what was set, and falls back to the default for everything else', () => {
  const set = { prefix: '~', suffix: 'Tab', gapMs: 80 };
  expect(readScannerSettings(JSON.stringify(set))).toEqual(set);
  for (const kept of [null, '', 'x', '{}', JSON.stringify({ ...set, gapMs: 9000 }), '[]'])
    expect(readScannerSettings(kept)).toBe(SCANNER_DEFAULT);
});

it('counts the same scan once within a second of seeing it last', () => {
  const first = { payload: 'A', atMs: 1000 };
  expect(isRepeatedScan(null, first, SAME_SCAN_MS)).toBe(false);
  expect(isRepeatedScan(first, { payload: 'A', atMs: 1999 }, SAME_SCAN_MS)).toBe(true);
  expect(isRepeatedScan(first, { payload: 'A', atMs: 2000 }, SAME_SCAN_MS)).toBe(false);
  expect(isRepeatedScan(first, { payload: 'B', atMs: 1001 }, SAME_SCAN_MS)).toBe(false);
});

it('knows at a glance what can be nothing but a bare code', () => {
  expect(bareCode(' WX4C0000123 ')).toBe('WX4C0000123');
  for (const payload of ['0110614141073464', ']d221SN1', '[)>\u001e06', 'P1\u001dQ2', '', '(01)'])
    expect(bareCode(payload)).toBe(null);
});
