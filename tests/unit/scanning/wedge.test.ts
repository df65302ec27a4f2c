import { describe, expect, it } from 'vitest';
import { SCANNER_DEFAULT, type ScannerSettings } from '@/lib/domain/scanning/scanner-settings';
import { advanceWedge, endByPause, NO_BURST } from '@/lib/domain/scanning/wedge';
import { type TypedKey, typeKeys } from '@/tests/support/wedge-keys';

const scansOf = (keys: TypedKey[], settings: Partial<ScannerSettings> = {}) =>
  typeKeys(keys, { ...SCANNER_DEFAULT, ...settings }).scans;
const typed = (text: string): TypedKey[] => [...text].map((key) => ({ key }));
const enter: TypedKey = { key: 'Enter' };

describe('a scanner that types', () => {
  it('is told by its speed', () => {
    expect(scansOf([...typed('WX4C0000123'), enter])).toEqual(['WX4C0000123']);
    expect(scansOf([...typed('WX4C0000123').map((key) => ({ ...key, afterMs: 60 })), enter])).toEqual([]);
    expect(scansOf([...typed('WX4C0000123'), { ...enter, afterMs: 300 }])).toEqual([]);
    expect(scansOf([...typed('AB'), enter])).toEqual([]);
  });

  it('is likely from its third character on, and a person’s typing never is', () => {
    const down = { kind: 'down', ctrl: false, alt: false, meta: false, isRepeat: false } as const;
    const likely = (text: string, gapMs: number): boolean[] => {
      let burst = NO_BURST;
      return [...text].map((key, index) => {
        const step = advanceWedge(burst, { ...down, key, atMs: 1000 + index * gapMs }, SCANNER_DEFAULT);
        burst = step.burst;
        return step.isLikely;
      });
    };
    expect(likely('WX4C', 5)).toEqual([false, false, true, true]);
    expect(likely('WX4C', 60)).toEqual([false, false, false, false]);
  });

  it('stands alone: the end of a person’s typing is no scan, and a code cut in two is none either', () => {
    const tail = typed('0000123').map((key, index) => (index === 0 ? { ...key, afterMs: 90 } : key));
    expect(scansOf([...typed('WX4C'), ...tail, enter])).toEqual([]);
    expect(scansOf([...typed('A'), { key: 'B', afterMs: 260 }, ...typed('CDE'), enter])).toEqual(['BCDE']);
  });

  it('may scan again at once', () => {
    expect(scansOf([...typed('AAA'), enter, ...typed('BBB'), enter])).toEqual(['AAA', 'BBB']);
  });

  it('is no key that is held down', () => {
    const held = typed('aaaaaa').map((key, index) => ({ ...key, isRepeat: index > 0 }));
    expect(scansOf([...held, enter])).toEqual([]);
  });

  it('keeps GS, however it is sent', () => {
    const separators: TypedKey[][] = [
      [{ key: 'Control' }, { key: ']', ctrl: true }],
      [{ key: '\u001d', ctrl: true }],
      [
        { key: 'Alt', alt: true },
        { key: '0', alt: true },
        { key: '2', alt: true },
        { key: '9', alt: true },
        { key: 'Alt', kind: 'up' },
      ],
      [{ key: 'F8' }],
    ];
    for (const separator of separators) {
      expect(scansOf([...typed('21SN1'), ...separator, ...typed('10LOT'), enter])).toEqual([
        '21SN1\u001d10LOT',
      ]);
    }
  });

  it('keeps the whole envelope of a label', () => {
    const ctrl = (key: string): TypedKey[] => [{ key: 'Control' }, { key, ctrl: true }];
    const keys = [...typed('[)>'), ...ctrl('^'), ...typed('06'), ...ctrl(']'), ...typed('PX')];
    expect(scansOf([...keys, ...ctrl('6'), ...ctrl('d'), enter])).toEqual([
      '[)>\u001e06\u001dPX\u001e\u0004',
    ]);
  });

  it('types brackets with AltGr', () => {
    expect(scansOf([...typed('A'), { key: '[', ctrl: true, alt: true }, ...typed('B'), enter])).toEqual([
      'A[B',
    ]);
  });

  it('has the prefix and the suffix of its settings', () => {
    expect(scansOf([...typed('~ABC'), { key: 'Tab' }], { prefix: '~', suffix: 'Tab' })).toEqual(['ABC']);
    expect(scansOf([...typed('ABC'), enter], { suffix: 'Tab' })).toEqual([]);
    const { burst } = typeKeys(typed('ABC'), { ...SCANNER_DEFAULT, suffix: 'pause' });
    const settings = { ...SCANNER_DEFAULT, suffix: 'pause' as const };
    expect(endByPause(burst, burst.lastMs + 50, settings)).toBe(null);
    expect(endByPause(burst, burst.lastMs + 51, settings)).toBe('ABC');
  });

  it('takes the keys that would do something else, and leaves a person theirs', () => {
    const down = { kind: 'down', ctrl: false, alt: false, meta: false, isRepeat: false } as const;
    const alone = advanceWedge(NO_BURST, { ...down, key: 'F8', atMs: 1000 }, SCANNER_DEFAULT);
    expect(alone).toMatchObject({ isTaken: false, scan: null });
    const copy = advanceWedge(NO_BURST, { ...down, key: 'c', ctrl: true, atMs: 1000 }, SCANNER_DEFAULT);
    expect(copy.isTaken).toBe(false);
  });
});
