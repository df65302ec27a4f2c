import { findItem, findItemsOfLot, findItemsOfPart } from '@/lib/data/items/find-items';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { findHolds } from '@/lib/data/trace/find-holds';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import type { TraceSubject } from '@/lib/domain/genealogy/trace-subject';
import { database } from '@/lib/server/database';

const LOT_ITEMS_MAX = 1000;
const PART_ITEMS_MAX = 60;

/** What the leading condition of a where-used question is, for its head: the narrowest material, else the station … */
export async function describeSubject(question: WhereUsedQuestion): Promise<TraceSubject> {
  const { item, lot, part, station, operator } = question;
  const db = database().pool;
  const { plant } = await loadPlant(db);
  const descriptionOf = (number: string | null) =>
    (plant.file.parts ?? []).find((entry) => entry.number === number)?.description ?? null;
  if (item !== undefined) {
    const row = await findItem(db, item);
    const holds = [
      ...(await findHolds(db, 'item', item)),
      ...(row?.lot == null ? [] : await findHolds(db, 'lot', row.lot)),
    ];
    return {
      about: 'item',
      code: item,
      item: row && {
        kind: row.kind,
        part: row.part,
        description: descriptionOf(row.part),
        lot: row.lot,
        supplier: row.supplier,
        quantity: row.quantity,
        isRetired: row.isRetired,
      },
      isHeld: holds.some((hold) => hold.releasedAt === null),
    };
  }
  if (lot !== undefined) {
    const items = await findItemsOfLot(db, lot, LOT_ITEMS_MAX);
    const holds = await findHolds(db, 'lot', lot);
    return {
      about: 'lot',
      code: lot,
      itemCount: items.length,
      parts: [...new Set(items.flatMap((row) => row.part ?? []))],
      isHeld: holds.some((hold) => hold.releasedAt === null),
    };
  }
  if (part !== undefined) {
    const { items, count } = await findItemsOfPart(db, part, PART_ITEMS_MAX);
    return { about: 'part', code: part, description: descriptionOf(part), itemCount: count, items };
  }
  if (station !== undefined) {
    const { operation, line } = plant.station(station) ?? {};
    return { about: 'station', code: station, operation: operation ?? null, line: line ?? null };
  }
  if (operator !== undefined)
    return { about: 'operator', code: operator, name: plant.operator(operator)?.name ?? null };
  return { about: 'time' };
}
