import { inflateSync } from 'node:zlib';
import {
  BarcodeFormat,
  BinaryBitmap,
  DecodeHintType,
  HybridBinarizer,
  MultiFormatReader,
  RGBLuminanceSource,
} from '@zxing/library';

const MM_PER_POINT = 25.4 / 72;

/** A rectangle in mm from the upper left corner of its page. */
export type DrawnBox = { xMm: number; yMm: number; widthMm: number; heightMm: number };

/** A page as its operators draw it: its size, its filled boxes, and the letters of its texts by glyph count. */
export type DrawnPage = { widthMm: number; heightMm: number; boxes: DrawnBox[] };

type Matrix = [number, number, number, number, number, number];

/** Reads what pdfkit writes: sizes of pages, and their rectangles through every transformation. */
export function readLabelPdf(pdf: Buffer): DrawnPage[] {
  const text = pdf.toString('latin1');
  const sizes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
  const contents = [...text.matchAll(/\/Length \d+.*?stream\n/gs)].flatMap((match) => {
    const start = (match.index ?? 0) + match[0].length;
    try {
      const content = inflateSync(pdf.subarray(start)).toString('latin1');
      return / re\n/.test(content) ? [content] : [];
    } catch {
      return [];
    }
  });
  return contents.map((content, page) => {
    const [, width = 0, height = 0] = (sizes[page] ?? []).map(Number);
    const boxes = boxesOf(content).map(([x, y, w, h]) => ({
      xMm: x * MM_PER_POINT,
      yMm: (height - y) * MM_PER_POINT,
      widthMm: w * MM_PER_POINT,
      heightMm: h * MM_PER_POINT,
    }));
    return { widthMm: width * MM_PER_POINT, heightMm: height * MM_PER_POINT, boxes };
  });
}

/** Boxes as [left, top, width, height] in points from the lower left corner of the page. */
function boxesOf(content: string): [number, number, number, number][] {
  const stack: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  const boxes: [number, number, number, number][] = [];
  for (const line of content.split('\n')) {
    const numbers = line.split(' ').slice(0, -1).map(Number);
    if (line === 'q') stack.push(now);
    else if (line === 'Q') now = stack.pop() ?? now;
    else if (line.endsWith(' cm')) now = multiply(numbers, now);
    else if (line.endsWith(' re')) {
      const [x = 0, y = 0, w = 0, h = 0] = numbers;
      const [a, , , d, e, f] = now;
      const corners = [d * y + f, d * (y + h) + f];
      boxes.push([
        Math.min(a * x + e, a * (x + w) + e),
        Math.max(...corners),
        Math.abs(a * w),
        Math.abs(d * h),
      ]);
    }
  }
  return boxes;
}

function multiply([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: number[], m: Matrix): Matrix {
  return [
    a * m[0] + b * m[2],
    a * m[1] + b * m[3],
    c * m[0] + d * m[2],
    c * m[1] + d * m[3],
    e * m[0] + f * m[2] + m[4],
    e * m[1] + f * m[3] + m[5],
  ];
}

const DOTS_PER_MM = 24;
/** White around what is decoded: what is drawn nearer than that would be in the picture. */
const AROUND_MM = 2;

/** Decodes the symbol that boxes draw, with a decoder that had no part in drawing it. */
export function decodeBoxes(boxes: readonly DrawnBox[]): string {
  const dotsPerMm = DOTS_PER_MM;
  const xMm = Math.min(...boxes.map((box) => box.xMm)) - AROUND_MM;
  const yMm = Math.min(...boxes.map((box) => box.yMm)) - AROUND_MM;
  const area = {
    xMm,
    yMm,
    widthMm: Math.max(...boxes.map((box) => box.xMm + box.widthMm)) - xMm + AROUND_MM,
    heightMm: Math.max(...boxes.map((box) => box.yMm + box.heightMm)) - yMm + AROUND_MM,
  };
  const width = Math.round(area.widthMm * dotsPerMm);
  const height = Math.round(area.heightMm * dotsPerMm);
  const grey = new Uint8ClampedArray(width * height).fill(255);
  for (const { xMm, yMm, widthMm, heightMm } of boxes) {
    const [left, top] = [Math.round((xMm - area.xMm) * dotsPerMm), Math.round((yMm - area.yMm) * dotsPerMm)];
    const [right, bottom] = [
      Math.round((xMm - area.xMm + widthMm) * dotsPerMm),
      Math.round((yMm - area.yMm + heightMm) * dotsPerMm),
    ];
    for (let y = Math.max(0, top); y < Math.min(height, bottom); y += 1)
      for (let x = Math.max(0, left); x < Math.min(width, right); x += 1) grey[y * width + x] = 0;
  }
  const hints = new Map<DecodeHintType, unknown>([
    [DecodeHintType.POSSIBLE_FORMATS, [BarcodeFormat.QR_CODE, BarcodeFormat.DATA_MATRIX]],
    [DecodeHintType.TRY_HARDER, true],
  ]);
  const bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(grey, width, height)));
  return new MultiFormatReader().decode(bitmap, hints).getText();
}
