import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import type { ProductEntry } from '@/lib/domain/plant/plant-file';

/** Which product revision a tablet asks about. */
export const productQuestionSchema = z.strictObject({ product: codeSchema, revision: codeSchema });

const lineSchema = z.object({
  part: z.string().nullable(),
  /** The product of a sub-assembly, or null. */
  inner: z.string().nullable(),
  positions: z.array(z.string()),
  station: z.string().nullable(),
  slot: z.string().nullable(),
});
export type ProductLine = z.infer<typeof lineSchema>;

/** What a station must know of a product revision: its parts and where they go. */
export const productPictureSchema = z.object({
  product: z.string(),
  revision: z.string(),
  lines: z.array(lineSchema),
});
export type ProductPicture = z.infer<typeof productPictureSchema>;

/** A product's BOM as stations use it. */
export function productPicture(entry: ProductEntry): ProductPicture {
  return {
    product: entry.number,
    revision: entry.revision,
    lines: (entry.bom ?? []).map((line) => ({
      part: line.part ?? null,
      inner: line.product ?? null,
      positions: line.positions ?? [],
      station: line.station ?? null,
      slot: line.slot ?? null,
    })),
  };
}

/** Reference designators that a station can be blamed for: those its slots supply, else all of the product. */
export function positionsAt(product: ProductPicture, station: string): string[] {
  const here = product.lines.filter((line) => line.station === station);
  const lines = here.length > 0 ? here : product.lines;
  return inDesignatorOrder(lines.flatMap((line) => line.positions));
}

/** Whether a product's BOM names positions and this is none of them: a typing error, or a place outside of the BOM. */
export function isOutsideBom({ lines }: ProductPicture, position: string): boolean {
  const named = lines.flatMap((line) => line.positions);
  return named.length > 0 && !named.includes(position);
}

const SIMILAR_MAX = 6;

/** Positions of the BOM that a typed one may have meant: the same but for case and zeros, then those one key away. */
export function similarPositions({ lines }: ProductPicture, typed: string): string[] {
  const wanted = plainDesignator(typed);
  const all = inDesignatorOrder(lines.flatMap((line) => line.positions));
  const same = all.filter((position) => plainDesignator(position) === wanted);
  const near = all.filter((position) => isOneKeyAway(plainDesignator(position), wanted));
  return [...new Set([...same, ...near])].slice(0, SIMILAR_MAX);
}

function plainDesignator(position: string): string {
  return position
    .toUpperCase()
    .replaceAll(/[\s._-]/g, '')
    .replaceAll(/(?<!\d)0+(?=\d)/g, '');
}

/** Whether one text becomes the other by one key too many, too few, or wrong. */
function isOneKeyAway(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let from = 0;
  while (from < Math.min(a.length, b.length) && a[from] === b[from]) from += 1;
  const rest = (text: string, skipped: number) => text.slice(from + skipped);
  if (a.length === b.length) return rest(a, 1) === rest(b, 1);
  return a.length > b.length ? rest(a, 1) === rest(b, 0) : rest(a, 0) === rest(b, 1);
}

/** Parts that the BOM allows at a position. */
export function partsAt(product: ProductPicture, position: string): string[] {
  const parts = product.lines.flatMap((line) =>
    line.part !== null && line.positions.includes(position) ? [line.part] : [],
  );
  return [...new Set(parts)];
}

/** Lines whose part is scanned by hand: neither drawn from a slot nor a sub-assembly. */
export function scannedLines(product: ProductPicture): (ProductLine & { part: string })[] {
  return product.lines.flatMap((line) =>
    line.slot === null && line.part !== null ? [{ ...line, part: line.part }] : [],
  );
}

/** Positions where a sub-assembly belongs, with its product. */
export function innerPositions(product: ProductPicture): { inner: string; position: string }[] {
  return product.lines.flatMap(({ inner, positions }) =>
    inner === null ? [] : positions.map((position) => ({ inner, position })),
  );
}

const numberedFirst = new Intl.Collator('en', { numeric: true });

function inDesignatorOrder(positions: readonly string[]): string[] {
  return [...new Set(positions)].sort(numberedFirst.compare);
}
