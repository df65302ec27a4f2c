import { findItemHistory } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { readColumns, rowsSource } from '@/lib/data/rows';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { foldItem } from '@/lib/domain/items/fold-item';
import { formatInstant } from '@/lib/domain/time';

const COLUMNS = readColumns(
  'item text, kind text, part text, lot text, supplier text, quantity float8, counted_at timestamptz, inspected text, is_retired boolean',
);
const CHANGED = COLUMNS.filter(({ name }) => name !== 'item').map(({ name }) => `${name} = excluded.${name}`);

export type ItemRow = NonNullable<ReturnType<typeof itemRow>>;

/** Folds an item's own events again; an item that was never received has no row. */
export async function refreshItem(db: Queryable, item: string): Promise<void> {
  const row = itemRow(item, await findItemHistory(db, item));
  if (row === null) await db.query('delete from read.item where item = $1', [item]);
  else await writeItems(db, [row]);
}

/** Writes folded items; one statement, whatever their number. */
export async function writeItems(db: Queryable, rows: readonly ItemRow[]): Promise<void> {
  if (rows.length === 0) return;
  const { names, select, from, values } = rowsSource(COLUMNS, rows);
  await db.query(
    `insert into read.item (${names}) select ${select} from ${from}
     on conflict (item) do update set ${CHANGED.join(', ')}`,
    values,
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
