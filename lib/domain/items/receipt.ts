import type { ItemKind } from '@/lib/domain/events/vocabulary';
import type { LabelFacts } from '@/lib/domain/scanning/label-facts';

/** What is said of an item when it is booked in, as it is typed. */
export type Receipt = { kind: ItemKind; part: string; lot: string; supplier: string; quantity: string };
/** A receipt with the item it was for. */
export type BookedItem = Receipt & { item: string };

const FIRST: Receipt = { kind: 'reel', part: '', lot: '', supplier: '', quantity: '' };
const SHARED = ['part', 'lot', 'supplier', 'quantity'] as const;

/** What the form begins with: what the label of this item says, else what the item before it was. */
export function beginReceipt(before: BookedItem | null, label: LabelFacts | null): Receipt {
  const { kind, part, lot, supplier, quantity } = before ?? FIRST;
  return {
    kind,
    part: label?.part ?? part,
    lot: label?.lot ?? lot,
    supplier: label?.supplier ?? supplier,
    quantity: label?.quantity ?? quantity,
  };
}

/** Fields that still say what the item before said, and that nobody has said of this one. */
export function takenOver(
  receipt: Receipt,
  before: BookedItem | null,
  label: LabelFacts | null,
): (typeof SHARED)[number][] {
  if (before === null) return [];
  return SHARED.filter(
    (field) => receipt[field] !== '' && receipt[field] === before[field] && (label?.[field] ?? null) === null,
  );
}
