import { arrangeLabel, type SymbolKind } from '@/lib/domain/labels/arrange-label';
import type { LabelPicture, LabelProblem } from '@/lib/domain/labels/label-picture';
import { type LabelStock, labelSize } from '@/lib/domain/labels/label-stock';
import { drawSymbol } from '@/lib/server/labels/draw-symbol';
import { labelFonts } from '@/lib/server/labels/label-fonts';

const INCH_MM = 25.4;

/** Draws and arranges one label, or says why it cannot be made.. */
export function makeLabel(options: {
  code: string;
  details: readonly string[];
  symbol: SymbolKind;
  stock: LabelStock;
}): { ok: true; label: LabelPicture } | { ok: false; problem: LabelProblem } {
  const { code, symbol, stock } = options;
  const { code: codeFont, detail: detailFont } = labelFonts();
  const letters = [...codeFont.missing(code), ...options.details.flatMap(detailFont.missing)];
  if (letters.length > 0)
    return { ok: false, problem: { code, fault: 'letters_missing', letters: [...new Set(letters)] } };
  const modules = drawSymbol(symbol, code);
  const arranged = arrangeLabel({
    ...labelSize(stock),
    dotMm: stock.kind === 'roll' ? INCH_MM / stock.dpi : null,
    modules,
    code,
    details: options.details,
    codeWidth: codeFont.width,
    detailWidth: detailFont.width,
  });
  if (!arranged.ok) return { ok: false, problem: { code, fault: arranged.fault } };
  return { ok: true, label: { code, modules, arranged: arranged.label } };
}
