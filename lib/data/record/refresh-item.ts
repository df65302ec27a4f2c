import { findItemHistory } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { foldItem } from '@/lib/domain/items/fold-item';
import { formatInstant } from '@/lib/domain/time';

/** Folds an item's own events again; an item that was never received has no row. */
export async function refreshItem(db: Queryable, item: string): Promise<void> {
  const state = foldItem(await findItemHistory(db, item));
  await db.query('delete from read.item where item = $1', [item]);
  if (state === null) return;
  const { kind, part, lot, supplier, quantity, countedAtUs, inspected, isRetired } = state;
  await db.query(
    `insert into read.item (item, kind, part, lot, supplier, quantity, counted_at, inspected, is_retired)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [
      item,
      kind,
      part,
      lot,
      supplier,
      quantity,
      countedAtUs === null ? null : formatInstant(countedAtUs),
      inspected,
      isRetired,
    ],
  );
}
