import type { PlacedText } from '@/lib/domain/labels/arrange-label';

/** Width of a text whose letters are 1 high. */
export type TextWidth = (text: string) => number;

type Box = { xMm: number; yMm: number; widthMm: number; heightMm: number };

/** Letters that are still read at arm's length, and as large as looks well (common practice, no source). */
const SIZE_MIN_MM = 1.2;
const SIZE_MAX_MM = 6;
const SIZE_STEP_MM = 0.1;
const LINE_HEIGHT = 1.2;
const DETAIL_SHARE = 0.75;
const CODE_LINES_MAX = 4;

/**
 * Sets the code, whole, as large as it fits into the box in at most four lines, and under it as many details as there
 * is room for. Null when not even the smallest letters fit.
 */
export function fitText({
  box,
  code,
  details,
  codeWidth,
  detailWidth,
}: {
  box: Box;
  code: string;
  details: readonly string[];
  codeWidth: TextWidth;
  detailWidth: TextWidth;
}): PlacedText[] | null {
  for (let sizeMm = SIZE_MAX_MM; sizeMm > SIZE_MIN_MM - SIZE_STEP_MM / 2; sizeMm -= SIZE_STEP_MM) {
    const codeLines = breakText(code, box.widthMm / sizeMm, codeWidth);
    if (codeLines === null || codeLines.length > CODE_LINES_MAX) continue;
    const codeHeightMm = codeLines.length * sizeMm * LINE_HEIGHT;
    const detailMm = Math.max(SIZE_MIN_MM, sizeMm * DETAIL_SHARE);
    const fitting = details.filter((detail) => detailWidth(detail) * detailMm <= box.widthMm);
    const room = Math.floor((box.heightMm - codeHeightMm) / (detailMm * LINE_HEIGHT) + 1e-9);
    if (codeHeightMm > box.heightMm) continue;
    // Smaller letters are better than a detail that is missing, while the letters are large.
    const isComplete = fitting.length === details.length && room >= details.length;
    if (!isComplete && sizeMm > 2 * SIZE_MIN_MM) continue;
    const lines = [
      ...codeLines.map((text) => ({ text, sizeMm, width: codeWidth, isCode: true })),
      ...fitting
        .slice(0, Math.max(0, room))
        .map((text) => ({ text, sizeMm: detailMm, width: detailWidth, isCode: false })),
    ];
    const heightMm = lines.reduce((sum, line) => sum + line.sizeMm * LINE_HEIGHT, 0);
    let yMm = box.yMm + (box.heightMm - heightMm) / 2;
    return lines.map(({ text, sizeMm: size, width, isCode }) => {
      yMm += size * LINE_HEIGHT;
      const baselineMm = yMm - size * 0.3;
      return { text, xMm: box.xMm, baselineMm, sizeMm: size, widthMm: width(text) * size, isCode };
    });
  }
  return null;
}

/** Breaks a code, which has no spaces to break at, into lines that are no wider; null when one letter is wider. */
function breakText(text: string, widthMax: number, width: TextWidth): string[] | null {
  const lines: string[] = [];
  let line = '';
  for (const letter of text) {
    if (width(letter) > widthMax) return null;
    if (width(line + letter) > widthMax) {
      lines.push(line);
      line = '';
    }
    line += letter;
  }
  return [...lines, line];
}
