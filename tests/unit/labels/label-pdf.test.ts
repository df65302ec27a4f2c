import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { MODULE_MIN_MM, QUIET_MODULES, SYMBOLS } from '@/lib/domain/labels/arrange-label';
import { codeSeries, labelOrderSchema } from '@/lib/domain/labels/label-order';
import {
  type LabelStock,
  labelPlace,
  labelSize,
  labelStockSchema,
  pageSize,
  STOCK_PRESETS,
} from '@/lib/domain/labels/label-stock';
import { labelPdf } from '@/lib/server/labels/label-pdf';
import { makeLabel } from '@/lib/server/labels/make-label';
import { decodeBoxes, readLabelPdf } from '@/tests/support/read-label-pdf';

const STOCKS = Object.entries(STOCK_PRESETS);

function made(options: Parameters<typeof makeLabel>[0]) {
  const result = makeLabel(options);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.label;
}

describe.each(STOCKS)('labels on %s', (_name, stock: LabelStock) => {
  it.each(SYMBOLS)('are drawn in their true size and read back: %s', async (symbol) => {
    const codes = ['WX4C0000123', 'WX4C0000124', 'RL-001187/7'];
    const labels = codes.map((code) => made({ code, details: ['WX4 C'], symbol, stock }));
    const pages = readLabelPdf(await labelPdf({ title: 't', stock, labels, skip: 0 }));
    expect(pages).toHaveLength(stock.kind === 'roll' ? 3 : 1);
    const size = labelSize(stock);
    for (const page of pages) {
      expect(page.widthMm).toBeCloseTo(pageSize(stock).widthMm, 2);
      expect(page.heightMm).toBeCloseTo(pageSize(stock).heightMm, 2);
    }
    codes.forEach((code, index) => {
      const { page, xMm, yMm } = labelPlace(stock, index);
      const boxes = (pages[page]?.boxes ?? []).filter(
        (box) =>
          box.xMm >= xMm && box.xMm < xMm + size.widthMm && box.yMm >= yMm && box.yMm < yMm + size.heightMm,
      );
      expect(boxes.length).toBeGreaterThan(20);
      expect(decodeBoxes(boxes)).toBe(code);
      const moduleMm = labels[index]?.arranged.symbol.moduleMm ?? 0;
      for (const box of boxes) {
        expect(box.heightMm).toBeCloseTo(moduleMm, 3);
        expect(Math.abs(box.widthMm / moduleMm - Math.round(box.widthMm / moduleMm))).toBeLessThan(0.01);
      }
      // The quiet zone lies on the label, and no text in it.
      const quietMm = QUIET_MODULES[symbol] * moduleMm;
      const left = Math.min(...boxes.map((box) => box.xMm)) - xMm;
      const right = Math.max(...boxes.map((box) => box.xMm + box.widthMm)) - xMm;
      expect(left).toBeGreaterThanOrEqual(quietMm - 0.01);
      expect(size.widthMm - right).toBeGreaterThanOrEqual(quietMm - 0.01);
    });
  });
});

test('a module is a whole number of the printer’s dots', () => {
  for (const dpi of [203, 300, 600] as const) {
    const stock = { kind: 'roll', widthMm: 50, heightMm: 25, dpi } as const;
    const dots =
      (made({ code: 'WX4C0000123', details: [], symbol: 'qr', stock }).arranged.symbol.moduleMm * dpi) / 25.4;
    expect(dots).toBeCloseTo(Math.round(dots), 6);
    expect(Math.round(dots)).toBeGreaterThan(0);
  }
});

test('a code that is too dense for its label is told of, one that does not fit is refused', () => {
  const small = { kind: 'roll', widthMm: 25, heightMm: 10, dpi: 300 } as const;
  const long = 'X'.repeat(40);
  const dense = made({ code: 'x'.repeat(40), details: [], symbol: 'qr', stock: small });
  expect(dense.arranged.symbol.moduleMm).toBeLessThan(MODULE_MIN_MM);
  expect(dense.arranged.isTooDense).toBe(true);
  expect(made({ code: 'WX4C123', details: [], symbol: 'datamatrix', stock: small }).arranged.isTooDense).toBe(
    false,
  );
  const tiny = { ...small, widthMm: 6, heightMm: 6, dpi: 203 } as const;
  expect(makeLabel({ code: long, details: [], symbol: 'qr', stock: tiny })).toMatchObject({
    ok: false,
    problem: { fault: 'symbol_does_not_fit' },
  });
  expect(makeLabel({ code: long, details: [], symbol: 'datamatrix', stock: tiny })).toMatchObject({
    ok: false,
    problem: { code: long },
  });
});

test('letters that the embedded font does not have are named, those it has are set', () => {
  const stock = STOCK_PRESETS['roll-100x50'];
  expect(makeLabel({ code: 'op-1', details: ['Łucja Ñandú Ελένη Ирина'], symbol: 'qr', stock }).ok).toBe(
    true,
  );
  expect(makeLabel({ code: 'op-2', details: ['林'], symbol: 'qr', stock })).toEqual({
    ok: false,
    problem: { code: 'op-2', fault: 'letters_missing', letters: ['林'] },
  });
});

test('everything on a label lies on it, whatever its size', () => {
  const side = fc.double({ min: 8, max: 120, noNaN: true });
  const code = fc.stringMatching(/^[A-Za-z0-9./-]{1,30}$/);
  let madeCount = 0;
  fc.assert(
    fc.property(side, side, code, fc.constantFrom(...SYMBOLS), (widthMm, heightMm, text, symbol) => {
      const stock = { kind: 'roll', widthMm, heightMm, dpi: 300 } as const;
      const result = makeLabel({ code: text, details: ['WX4 C', 'LOT-7'], symbol, stock });
      if (!result.ok) return;
      madeCount += 1;
      const { symbol: at, texts } = result.label.arranged;
      const quiet = QUIET_MODULES[symbol];
      const symbolRight = at.xMm + (result.label.modules.columns + quiet) * at.moduleMm;
      const symbolBottom = at.yMm + (result.label.modules.rows + quiet) * at.moduleMm;
      expect(at.xMm - quiet * at.moduleMm).toBeGreaterThanOrEqual(0);
      expect(symbolRight).toBeLessThanOrEqual(widthMm);
      expect(symbolBottom).toBeLessThanOrEqual(heightMm);
      expect(
        texts
          .filter(({ isCode }) => isCode)
          .map((each) => each.text)
          .join(''),
      ).toBe(text);
      for (const each of texts) {
        expect(each.xMm + each.widthMm).toBeLessThanOrEqual(widthMm + 1e-6);
        expect(each.baselineMm).toBeLessThanOrEqual(heightMm);
        expect(each.xMm >= symbolRight || each.baselineMm - each.sizeMm >= symbolBottom - 0.5).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
  expect(madeCount).toBeGreaterThan(20);
});

test('a series counts up and keeps its width', () => {
  expect(codeSeries('WX4C0000099', 3)).toEqual(['WX4C0000099', 'WX4C0000100', 'WX4C0000101']);
  expect(codeSeries('CT-8', 2)).toEqual(['CT-8', 'CT-9']);
  expect(codeSeries('CT-9', 2)).toBe(null);
  expect(codeSeries('NONE', 2)).toBe(null);
});

test('measures that leave no label are refused, and so are too many labels', () => {
  const sheet = STOCK_PRESETS['sheet-a4'];
  expect(labelStockSchema.safeParse({ ...sheet, columns: 30, columnGapMm: 5 }).success).toBe(false);
  const order = { kind: 'unit', codes: ['A'], symbol: 'qr', copies: 1, skip: 0, stock: sheet, as: 'pdf' };
  expect(labelOrderSchema.safeParse(order).success).toBe(true);
  const many = Array.from({ length: 300 }, (_, index) => `U${index}`);
  expect(labelOrderSchema.safeParse({ ...order, codes: many, copies: 2 }).success).toBe(false);
});
