import { findItemHistory } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { foldItem } from '@/lib/domain/items/fold-item';
import { formatInstant } from '@/lib/domain/time';

/** Folds an item's own events again; an item that was never received has no row. */
export async function refreshItem(db: Queryable, item: string): Promise<void> {
  const row = itemRow(item, await findItemHistory(db, item));
  await db.query('delete from read.item where item = $1', [item]);
  if (row === null) return;
  await db.query(
    `insert into read.item (item, kind, part, lot, supplier, quantity, counted_at, inspected, is_retired)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    Object.values(row),
  );
}

/** An item's row from its own events that count, in order; null for one that was never received. */
export function itemRow(item: string, history: readonly LoggedEvent[]) {
  const state = foldItem(history);
  if (state === null) return null;
  const { kind, part, lot, supplier, quantity, countedAtUs, inspected, isRetired } = state;
  return {
    item,
    kind,
    part,
    lot,
    supplier,
    quantity,
    counted_at: countedAtUs === null ? null : formatInstant(countedAtUs),
    inspected,
    is_retired: isRetired,
  };
}
