import { findItemParts, findUnitProducts } from '@/lib/data/labels/find-label-details';
import { findPrinted } from '@/lib/data/labels/find-printed';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { LabelKind } from '@/lib/domain/events/vocabulary';
import { isWholeSerial } from '@/lib/domain/plant/serial-pattern';
import { database } from '@/lib/server/database';

/** What stands beside a code on its label, and how many times it was printed before. */
export type LabelSubject = { code: string; details: string[]; printed: number };

/** What labels say beside their codes: product, part and lot, name; nothing for what is not known yet. */
export async function describeLabels(kind: LabelKind, codes: readonly string[]): Promise<LabelSubject[]> {
  const db = database().pool;
  const printed = await findPrinted(db, kind, codes);
  const detailsOf = await detailsByCode(kind, codes);
  return codes.map((code) => ({ code, details: detailsOf(code), printed: printed.get(code) ?? 0 }));
}

async function detailsByCode(kind: LabelKind, codes: readonly string[]): Promise<(code: string) => string[]> {
  const db = database().pool;
  const { plant } = await loadPlant(db);
  switch (kind) {
    case 'unit': {
      const units = await findUnitProducts(db, codes);
      const products = plant.file.products ?? [];
      return (code) => {
        const unit = units.get(code);
        if (unit?.product != null) return [`${unit.product} ${unit.revision ?? ''}`.trim()];
        // A serial that is printed before its unit is started says by its pattern what it will be.
        const fitting = products.filter(
          ({ serialPattern }) => serialPattern !== undefined && isWholeSerial(serialPattern, code),
        );
        const [only] = fitting;
        return only !== undefined && fitting.length === 1 ? [`${only.number} ${only.revision}`] : [];
      };
    }
    case 'item': {
      const items = await findItemParts(db, codes);
      return (code) => {
        const { part = null, lot = null } = items.get(code) ?? {};
        return [part, lot].filter((each) => each !== null);
      };
    }
    case 'container':
      return () => [];
    case 'badge':
      return (code) => {
        const name = plant.operator(code)?.name ?? '';
        return name === '' ? [] : [name];
      };
    default:
      return kind satisfies never;
  }
}
