import PDFDocument from 'pdfkit';
import type { LabelPicture } from '@/lib/domain/labels/label-picture';
import { type LabelStock, labelPlace, pageSize } from '@/lib/domain/labels/label-stock';
import { moduleRuns } from '@/lib/domain/labels/symbol-path';
import { labelFonts } from '@/lib/server/labels/label-fonts';

const POINTS_PER_MM = 72 / 25.4;

/** Labels as a PDF in their true size: page after page, the first `skip` places of the first sheet left empty. */
export async function labelPdf(options: {
  title: string;
  stock: LabelStock;
  labels: readonly LabelPicture[];
  skip: number;
}): Promise<Buffer> {
  const { stock, labels, skip } = options;
  const { widthMm, heightMm } = pageSize(stock);
  const size: [number, number] = [widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM];
  const { code, detail } = labelFonts();
  const document = new PDFDocument({
    size,
    margin: 0,
    autoFirstPage: false,
    info: { Title: options.title, Creator: 'Reelkin' },
  });
  document.registerFont('code', code.bytes).registerFont('detail', detail.bytes);
  const parts: Buffer[] = [];
  const written = new Promise<Buffer>((resolve, reject) => {
    document.on('data', (part: Buffer) => parts.push(part));
    document.on('end', () => resolve(Buffer.concat(parts)));
    document.on('error', reject);
  });
  let page = -1;
  labels.forEach((label, index) => {
    const place = labelPlace(stock, skip + index);
    for (; page < place.page; page += 1) document.addPage({ size, margin: 0 });
    drawLabel(document, label, place);
  });
  document.end();
  return written;
}

/** Everything is drawn in mm from the upper left corner of the label. */
function drawLabel(
  document: PDFKit.PDFDocument,
  { modules, arranged: { symbol, texts } }: LabelPicture,
  { xMm, yMm }: { xMm: number; yMm: number },
): void {
  document.save().scale(POINTS_PER_MM).translate(xMm, yMm).fillColor('black');
  const { moduleMm } = symbol;
  for (const { column, row, length } of moduleRuns(modules))
    document.rect(symbol.xMm + column * moduleMm, symbol.yMm + row * moduleMm, length * moduleMm, moduleMm);
  document.fill();
  for (const { text, xMm: x, baselineMm, sizeMm, isCode } of texts)
    document
      .font(isCode ? 'code' : 'detail')
      .fontSize(sizeMm)
      .text(text, x, baselineMm, { lineBreak: false, baseline: 'alphabetic' });
  document.restore();
}
