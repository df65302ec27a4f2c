import bwip from 'bwip-js/node';
import qrcode from 'qrcode';
import type { SymbolKind, SymbolModules } from '@/lib/domain/labels/arrange-label';

/**
 * The modules of a symbol that carries a code. A QR code corrects 15 % (level M); a Data Matrix is ECC 200, square.
 */
export function drawSymbol(kind: SymbolKind, code: string): SymbolModules {
  switch (kind) {
    case 'qr': {
      const { modules } = qrcode.create(code, { errorCorrectionLevel: 'M' });
      const isDark = Array.from(modules.data, (bit) => bit !== 0);
      return { kind, columns: modules.size, rows: modules.size, isDark };
    }
    case 'datamatrix': {
      const [symbol] = bwip.raw({ bcid: 'datamatrix', text: code });
      if (symbol === undefined || !('pixs' in symbol)) throw new Error('No Data Matrix was drawn');
      const { pixs, pixx: columns, pixy: rows } = symbol;
      return { kind, columns, rows, isDark: pixs.map((bit) => bit !== 0) };
    }
    default:
      return kind satisfies never;
  }
}
