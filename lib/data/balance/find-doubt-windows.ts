import { z } from 'zod';
import { findBalanceWindows } from '@/lib/data/balance/find-balance-windows';
import { findGapWindows } from '@/lib/data/balance/find-gap-windows';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

/** Whether counts are looked at. */
export type DoubtChoice = { withCounts?: boolean };

const ITEMS_MAX = 5000;

const itemRow = z.object({ item: z.string() });

/**
 * The windows of doubt that touch a where-used question, none for a plant that states neither attrition nor scanning
 * devices: such a plant costs a look at its file.
 */
export async function findDoubtWindows(
  db: Queryable,
  question: WhereUsedQuestion,
  { withCounts = true }: DoubtChoice = {},
): Promise<DoubtWindow[]> {
  const { item, lot, part } = question;
  if (item === undefined && lot === undefined && part === undefined) return [];
  const { plant } = await loadPlant(db);
  if (!plant.weighsOrOwes) return [];
  const items = await findWantedItems(db, question);
  const gaps = await findGapWindows(db, { plant, stations: null });
  const wanted = new Set(items);
  return [
    ...(withCounts ? await findBalanceWindows(db, { plant, items }) : []),
    ...gaps.filter((window) => window.items.some((each) => wanted.has(each))),
  ];
}

/** The items that a question is about: the one that it names, or those received with the lot or of the part. */
async function findWantedItems(db: Queryable, { item, lot, part }: WhereUsedQuestion): Promise<string[]> {
  if (lot === undefined && part === undefined) return item === undefined ? [] : [item];
  const { rows } = await db.query(
    `select item from read.item
     where ($1::text is null or item = $1) and ($2::text is null or lot = $2) and ($3::text is null or part = $3)
     order by item desc limit ${ITEMS_MAX}`,
    [item ?? null, lot ?? null, part ?? null],
  );
  return rows.map((row) => itemRow.parse(row).item);
}
