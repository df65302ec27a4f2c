import { z } from 'zod';

/** Sheets of paper, in mm (ISO 216, ANSI/ASME Y14.1). */
const PAPERS = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

/** Smallest label that a code and its text are put on, in mm. */
const LABEL_SIDE_MIN_MM = 5;

const lengthMm = z.coerce.number().min(0).max(300);

/** A sheet of labels in rows and columns; margins are the same on both sides, gaps lie between labels. */
const sheetSchema = z.strictObject({
  kind: z.literal('sheet'),
  paper: z.enum(['A4', 'Letter']),
  rows: z.coerce.number().int().min(1).max(60),
  columns: z.coerce.number().int().min(1).max(30),
  marginTopMm: lengthMm,
  marginLeftMm: lengthMm,
  rowGapMm: lengthMm,
  columnGapMm: lengthMm,
});

/** A label of a label printer; its dots decide how wide a module can be. */
const rollSchema = z.strictObject({
  kind: z.literal('roll'),
  widthMm: z.coerce.number().min(LABEL_SIDE_MIN_MM).max(300),
  heightMm: z.coerce.number().min(LABEL_SIDE_MIN_MM).max(300),
  dpi: z.coerce.number().pipe(z.literal([203, 300, 600])),
});

const stockSchema = z.discriminatedUnion('kind', [sheetSchema, rollSchema]);
export type LabelStock = z.infer<typeof stockSchema>;

/** What labels are printed on. */
export const labelStockSchema = stockSchema.refine(
  (stock) => Math.min(...Object.values(labelSize(stock))) >= LABEL_SIDE_MIN_MM,
  {
    error: 'Margins and gaps leave no label of at least 5 mm.',
    params: { code: 'label_too_small' },
  },
);

/** Width and height of one label, in mm. */
export function labelSize(stock: LabelStock): { widthMm: number; heightMm: number } {
  if (stock.kind === 'roll') return { widthMm: stock.widthMm, heightMm: stock.heightMm };
  const { rows, columns, marginTopMm, marginLeftMm, rowGapMm, columnGapMm } = stock;
  const paper = PAPERS[stock.paper];
  return {
    widthMm: (paper.widthMm - 2 * marginLeftMm - (columns - 1) * columnGapMm) / columns,
    heightMm: (paper.heightMm - 2 * marginTopMm - (rows - 1) * rowGapMm) / rows,
  };
}

/** Width and height of a page, in mm: a sheet, or one label of a roll. */
export function pageSize(stock: LabelStock): { widthMm: number; heightMm: number } {
  return stock.kind === 'sheet' ? PAPERS[stock.paper] : labelSize(stock);
}

/** How many labels a page has. */
function labelsPerPage(stock: LabelStock): number {
  return stock.kind === 'sheet' ? stock.rows * stock.columns : 1;
}

/** Where a label lies on its page, by its number from 0: row by row, from the upper left corner, in mm. */
export function labelPlace(stock: LabelStock, index: number): { page: number; xMm: number; yMm: number } {
  const perPage = labelsPerPage(stock);
  const page = Math.floor(index / perPage);
  if (stock.kind === 'roll') return { page, xMm: 0, yMm: 0 };
  const { widthMm, heightMm } = labelSize(stock);
  const row = Math.floor((index % perPage) / stock.columns);
  const column = index % stock.columns;
  return {
    page,
    xMm: stock.marginLeftMm + column * (widthMm + stock.columnGapMm),
    yMm: stock.marginTopMm + row * (heightMm + stock.rowGapMm),
  };
}

/** Stocks to begin with; every number can be changed. */
export const STOCK_PRESETS = {
  'roll-25x10': { kind: 'roll', widthMm: 25, heightMm: 10, dpi: 300 },
  'roll-50x25': { kind: 'roll', widthMm: 50, heightMm: 25, dpi: 203 },
  'roll-100x50': { kind: 'roll', widthMm: 100, heightMm: 50, dpi: 203 },
  'sheet-a4': {
    kind: 'sheet',
    paper: 'A4',
    rows: 10,
    columns: 4,
    marginTopMm: 13,
    marginLeftMm: 8,
    rowGapMm: 0,
    columnGapMm: 2,
  },
  'sheet-letter': {
    kind: 'sheet',
    paper: 'Letter',
    rows: 10,
    columns: 3,
    marginTopMm: 12.7,
    marginLeftMm: 5,
    rowGapMm: 0,
    columnGapMm: 3,
  },
} as const satisfies Record<string, LabelStock>;
export type StockPreset = keyof typeof STOCK_PRESETS;
