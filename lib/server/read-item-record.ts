import { findExpectedLeft } from '@/lib/data/balance/find-expected-left';
import { findItem, findItemsOfLot } from '@/lib/data/items/find-items';
import { findStays } from '@/lib/data/items/find-stays';
import { findItemRecord } from '@/lib/data/log/find-recorded-events';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { findHolds } from '@/lib/data/trace/find-holds';
import type { ItemRecord, LotRecord } from '@/lib/domain/items/item-record';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';
import { traceAnswer } from '@/lib/server/trace-answer';

const LOT_ITEMS_MAX = 5000;

/** Everything that an item's page tells; null when nothing ever named it. */
export async function readItemRecord(item: string): Promise<ItemRecord | null> {
  const db = database().pool;
  const row = await findItem(db, item);
  const stays = await findStays(db, item);
  const history = await findItemRecord(db, item);
  const used = await traceAnswer({ item, limit: 1 });
  const isUsed = used.counts.certain.units + used.counts.possible.units > 0;
  if (row === null && stays.length === 0 && history.length === 0 && !isUsed) return null;
  const { plant } = await loadPlant(db);
  const { file } = plant;
  const ofLot = row?.lot == null ? [] : await findHolds(db, 'lot', row.lot);
  return {
    item,
    facts: row && {
      kind: row.kind,
      part: row.part,
      description: file.parts?.find(({ number }) => number === row.part)?.description ?? null,
      lot: row.lot,
      supplier: row.supplier,
      quantity: row.quantity,
      countedAt: row.countedAtUs === null ? null : formatInstant(row.countedAtUs),
      inspected: row.inspected,
      isRetired: row.isRetired,
      expected: row.isRetired ? null : await findExpectedLeft(db, { item, part: row.part, plant }),
    },
    holds: [...(await findHolds(db, 'item', item)), ...ofLot],
    stays,
    history,
    used,
    now: formatInstant(Date.now() * 1000),
  };
}

/** Everything that a lot's page tells; null when no item was received with it and no hold names it. */
export async function readLotRecord(lot: string): Promise<LotRecord | null> {
  const db = database().pool;
  const items = await findItemsOfLot(db, lot, LOT_ITEMS_MAX);
  const holds = await findHolds(db, 'lot', lot);
  if (items.length + holds.length === 0) return null;
  return {
    lot,
    items: items.map(({ countedAtUs: _, lot: __, ...item }) => item),
    holds,
    used: await traceAnswer({ lot, limit: 1 }),
  };
}
