import { z } from 'zod';
import { codeFault } from '@/lib/domain/codes';
import { LABEL_KINDS } from '@/lib/domain/events/vocabulary';
import { SYMBOLS } from '@/lib/domain/labels/arrange-label';
import { COPIES_MAX, codeSeries, LABELS_MAX } from '@/lib/domain/labels/label-order';
import {
  type LabelStock,
  labelStockSchema,
  STOCK_PRESETS,
  type StockPreset,
} from '@/lib/domain/labels/label-stock';

const PRESETS = Object.keys(STOCK_PRESETS);

function isPreset(name: string): name is StockPreset {
  return PRESETS.includes(name);
}

/** What the address of the labels page asks for; everything has a default, so that the page always stands. */
export const labelFormSchema = z.object({
  kind: z.enum(LABEL_KINDS).catch('unit'),
  codes: z.string().max(100_000).catch(''),
  count: z.coerce.number().int().min(1).max(LABELS_MAX).catch(1),
  symbol: z.enum(SYMBOLS).catch('datamatrix'),
  copies: z.coerce.number().int().min(1).max(COPIES_MAX).catch(1),
  skip: z.coerce.number().int().min(0).max(1800).catch(0),
  stock: z
    .string()
    .transform((name): StockPreset => (isPreset(name) ? name : 'roll-50x25'))
    .catch('roll-50x25'),
});
export type LabelForm = z.infer<typeof labelFormSchema>;

/** Numbers of a stock that can be changed, in the order of the form. */
export const STOCK_FIELDS = {
  roll: ['widthMm', 'heightMm', 'dpi'],
  sheet: ['rows', 'columns', 'marginTopMm', 'marginLeftMm', 'rowGapMm', 'columnGapMm'],
} as const;

/** The stock that a form describes: a preset with the numbers that were changed; null when no label is left. */
export function stockOfForm(
  form: LabelForm,
  numbers: Readonly<Record<string, unknown>>,
): { stock: LabelStock; isChangeRefused: boolean } {
  const preset = STOCK_PRESETS[form.stock];
  const given = STOCK_FIELDS[preset.kind].flatMap((name) =>
    typeof numbers[name] === 'string' && numbers[name] !== '' ? [[name, numbers[name]]] : [],
  );
  const changed = labelStockSchema.safeParse({ ...preset, ...Object.fromEntries(given) });
  return changed.success
    ? { stock: changed.data, isChangeRefused: false }
    : { stock: preset, isChangeRefused: true };
}

/** The codes of a form, one a line, each once; a single one begins a series of `count`. Codes that are none are named. */
export function codesOfForm({ codes: text, count, copies }: LabelForm): {
  codes: string[];
  bad: string | null;
} {
  const lines = [...new Set(text.split('\n').map((line) => line.trim()))].filter((line) => line !== '');
  const [first] = lines;
  const codes =
    lines.length === 1 && count > 1 && first !== undefined ? (codeSeries(first, count) ?? []) : lines;
  const bad = codes.find((code) => codeFault(code) !== null) ?? (codes.length === 0 ? first : undefined);
  const most = Math.floor(LABELS_MAX / copies);
  return { codes: bad === undefined ? codes.slice(0, most) : [], bad: bad ?? null };
}
