import { fitText, type TextWidth } from '@/lib/domain/labels/fit-text';

/** Symbologies of labels. */
export const SYMBOLS = ['qr', 'datamatrix'] as const;
export type SymbolKind = (typeof SYMBOLS)[number];

/** A symbol's modules, row by row; true is dark. */
export type SymbolModules = { kind: SymbolKind; columns: number; rows: number; isDark: readonly boolean[] };

/**
 * Quiet zone in modules: 4 around a QR code (ISO/IEC 18004), 1 around a Data Matrix (ISO/IEC 16022); both from memory.
 */
export const QUIET_MODULES: Record<SymbolKind, number> = { qr: 4, datamatrix: 1 };
/** Handheld scanners read smaller modules unsurely (common practice, no source). */
export const MODULE_MIN_MM = 0.25;
/** Larger modules only cost label. */
const MODULE_MAX_MM = 1;
/** Printers are not exact: nothing is put nearer to the edge of a label. */
const EDGE_MM = 0.8;
const TEXT_GAP_MM = 0.8;

/** A text on a label: its baseline's left end, the size of its letters and its width, in mm. */
export type PlacedText = {
  text: string;
  xMm: number;
  baselineMm: number;
  sizeMm: number;
  widthMm: number;
  isCode: boolean;
};

/** A label with everything in its place, in mm from its upper left corner. */
export type ArrangedLabel = {
  symbol: { xMm: number; yMm: number; moduleMm: number };
  texts: PlacedText[];
  /** The modules are smaller than scanners read surely. */
  isTooDense: boolean;
};

/** Why nothing can be printed on this label. */
export type LabelFault = 'symbol_does_not_fit' | 'text_does_not_fit';

/**
 * Arranges a symbol and, always beside or under it, its code and details. A module is a whole number of the printer's
 * dots, or it would be blurred. `dotMm` is null for a printer whose dots are too small to matter.
 */
export function arrangeLabel(options: {
  widthMm: number;
  heightMm: number;
  dotMm: number | null;
  modules: Pick<SymbolModules, 'kind' | 'columns' | 'rows'>;
  code: string;
  details: readonly string[];
  codeWidth: TextWidth;
  detailWidth: TextWidth;
}): { ok: true; label: ArrangedLabel } | { ok: false; fault: LabelFault } {
  const { widthMm, heightMm, modules } = options;
  const inner = { widthMm: widthMm - 2 * EDGE_MM, heightMm: heightMm - 2 * EDGE_MM };
  const isBeside = widthMm >= heightMm * 1.25;
  const room = isBeside
    ? { widthMm: inner.widthMm * 0.55, heightMm: inner.heightMm }
    : { widthMm: inner.widthMm, heightMm: inner.heightMm * 0.65 };
  const quiet = QUIET_MODULES[modules.kind];
  const moduleMm = moduleSize(
    Math.min(room.widthMm / (modules.columns + 2 * quiet), room.heightMm / (modules.rows + 2 * quiet)),
    options.dotMm,
  );
  if (moduleMm === 0) return { ok: false, fault: 'symbol_does_not_fit' };
  const zone = {
    widthMm: (modules.columns + 2 * quiet) * moduleMm,
    heightMm: (modules.rows + 2 * quiet) * moduleMm,
  };
  const zoneX = isBeside ? EDGE_MM : (widthMm - zone.widthMm) / 2;
  const zoneY = isBeside ? (heightMm - zone.heightMm) / 2 : EDGE_MM;
  const box = isBeside
    ? {
        xMm: zoneX + zone.widthMm + TEXT_GAP_MM,
        yMm: EDGE_MM,
        widthMm: inner.widthMm - zone.widthMm - TEXT_GAP_MM,
        heightMm: inner.heightMm,
      }
    : {
        xMm: EDGE_MM,
        yMm: zoneY + zone.heightMm + TEXT_GAP_MM,
        widthMm: inner.widthMm,
        heightMm: inner.heightMm - zone.heightMm - TEXT_GAP_MM,
      };
  const texts = fitText({ ...options, box });
  if (texts === null) return { ok: false, fault: 'text_does_not_fit' };
  const symbol = { xMm: zoneX + quiet * moduleMm, yMm: zoneY + quiet * moduleMm, moduleMm };
  return { ok: true, label: { symbol, texts, isTooDense: moduleMm < MODULE_MIN_MM - 1e-9 } };
}

/** The largest module that fits, in whole dots; 0 when not even one dot fits. */
function moduleSize(roomMm: number, dotMm: number | null): number {
  const largest = Math.min(roomMm, MODULE_MAX_MM);
  if (dotMm === null) return Math.floor(largest * 1000) / 1000;
  return Math.floor(largest / dotMm + 1e-9) * dotMm;
}
