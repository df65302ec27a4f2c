import { z } from 'zod';
import { codeSchema, statementSchema } from '@/lib/domain/codes';
import { LABEL_KINDS } from '@/lib/domain/events/vocabulary';
import { SYMBOLS } from '@/lib/domain/labels/arrange-label';
import { labelStockSchema } from '@/lib/domain/labels/label-stock';

/** Most labels that are printed at once. */
export const LABELS_MAX = 500;
/** Most copies of one label. */
export const COPIES_MAX = 50;

/** Labels to print: of what, how often, on what; `skip` labels of the first sheet are used already. */
export const labelOrderSchema = z
  .strictObject({
    kind: z.enum(LABEL_KINDS),
    codes: z.array(codeSchema).min(1).max(LABELS_MAX),
    symbol: z.enum(SYMBOLS),
    copies: z.int().min(1).max(COPIES_MAX),
    skip: z.int().min(0).max(1800),
    stock: labelStockSchema,
    /** Why labels are printed again that were printed before. */
    reason: statementSchema.optional(),
    /** A PDF file, or the browser's own print. */
    as: z.enum(['pdf', 'page']),
  })
  .refine(({ codes, copies }) => codes.length * copies <= LABELS_MAX, {
    error: `At most ${LABELS_MAX} labels at once.`,
    path: ['codes'],
    params: { code: 'too_big' },
  });
export type LabelOrder = z.infer<typeof labelOrderSchema>;

/** Codes that follow each other: the digits at the end count up and keep their width. Null without digits or room. */
export function codeSeries(first: string, count: number): string[] | null {
  const [, head = '', digits] = /^(.*?)([0-9]+)$/u.exec(first) ?? [];
  if (digits === undefined || digits.length > 15) return null;
  const start = Number(digits);
  if (String(start + count - 1).length > digits.length) return null;
  return Array.from(
    { length: count },
    (_, index) => head + String(start + index).padStart(digits.length, '0'),
  );
}
