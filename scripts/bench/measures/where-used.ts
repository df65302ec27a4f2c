import type pg from 'pg';
import { whereUsedStatement } from '@/lib/data/trace/where-used-sql';
import { whereUsed } from '@/lib/server/where-used';
import { reelCode, UNITS_PER_REEL } from '@/scripts/bench/line/bench-codes';
import { REEL_SLOTS } from '@/scripts/bench/line/bench-plant';
import { copiedCode } from '@/scripts/bench/line/copy-history';
import { canonicalAnswer, expectEqual, flatAnswer } from '@/scripts/bench/models/canonical-answer';
import type { DuckModel } from '@/scripts/bench/models/duckdb-model';
import { FLOOR, FLOOR_RANGE, FLOOR_WITH_PLACES } from '@/scripts/bench/models/floor';
import type { GraphModel } from '@/scripts/bench/models/graph-model';
import { TEXTBOOK_WHERE_USED } from '@/scripts/bench/models/textbook-model';
import { type Timing, timeEach } from '@/scripts/bench/report/percentiles';

const COMPARED = 60;

export type Models = { hasTextbook: boolean; duck: DuckModel | null; graph: GraphModel | null };
export type WhereUsedTimes = { rows: number; times: Record<string, Timing> };

/** Reels that were used up, spread over slots and time. */
export function usedReels(unitCount: number, count: number): string[] {
  const reels = Math.floor(unitCount / UNITS_PER_REEL) - 1;
  return Array.from({ length: count }, (_, index) =>
    reelCode((index * 37) % REEL_SLOTS.length, 1 + ((index * 7919) % Math.max(1, reels - 1))),
  );
}

/** Asks every model for reels, expects equal answers, and returns how many rows an answer had on average. */
export async function compareWhereUsed(
  client: pg.ClientBase,
  reels: readonly string[],
  { hasTextbook, duck, graph }: Models,
): Promise<number> {
  let rows = 0;
  for (const item of reels) {
    const { units } = await whereUsed({ item, limit: 5000 });
    rows += units.length;
    const answers = [{ model: 'Reelkin', answer: canonicalAnswer(flatAnswer(units)) }];
    if (hasTextbook)
      answers.push({ model: 'textbook', answer: canonicalAnswer((await askTextbook(client, item)).rows) });
    if (duck !== null) answers.push({ model: 'DuckDB', answer: canonicalAnswer(await duck.whereUsed(item)) });
    if (graph !== null) answers.push({ model: 'graphology', answer: canonicalAnswer(graph.whereUsed(item)) });
    expectEqual(answers, `where-used of ${item}`);
  }
  if (rows === 0) throw new Error('The benchmark compared no row at all.');
  return rows / reels.length;
}

/** Asks for reels of the first copy and for the same ones of the others: an answer must only differ by its codes. */
export async function compareCopies(reels: readonly string[], times: number): Promise<void> {
  for (const [index, item] of reels.entries()) {
    const copy = 1 + (index % (times - 1));
    const { units } = await whereUsed({ item, limit: 5000 });
    const copied = await whereUsed({ item: copiedCode(item, copy), limit: 5000 });
    const answers = [
      {
        model: 'the first copy',
        answer: canonicalAnswer(flatAnswer(units).map((row) => copiedRow(row, copy))),
      },
      { model: `copy ${copy}`, answer: canonicalAnswer(flatAnswer(copied.units)) },
    ];
    if (units.length === 0) throw new Error('The benchmark compared no row at all.');
    expectEqual(answers, `where-used of ${item}`);
  }
}

function copiedRow(row: Record<string, unknown>, copy: number): Record<string, unknown> {
  const shift = (value: unknown): unknown => (typeof value === 'string' ? copiedCode(value, copy) : value);
  const { unit, container, shipment, through } = row;
  return {
    ...row,
    unit: shift(unit),
    container: shift(container),
    shipment: shift(shipment),
    through: Array.isArray(through) ? through.map(shift) : through,
  };
}

function askTextbook(client: pg.ClientBase, item: string) {
  return client.query({ name: 'textbook', text: TEXTBOOK_WHERE_USED, values: [item] });
}

/** Where-used of one reel, all fields: compares the models' answers, then times each of them on the same connection. */
export async function measureWhereUsed(
  client: pg.ClientBase,
  reels: readonly string[],
  models: Models,
): Promise<WhereUsedTimes> {
  const { hasTextbook, duck, graph } = models;
  const own = (item: string) => {
    const { text, values } = whereUsedStatement({ item, limit: 5000 });
    return client.query({ name: 'own', text: `${text} select * from answer order by unit`, values });
  };
  const rows = await compareWhereUsed(client, reels.slice(0, COMPARED), models);
  const ranges: unknown[][] = [];
  for (const item of reels) {
    const range = await client.query(FLOOR_RANGE, [item]);
    for (const { station, breadth, from_at, to_at } of range.rows)
      ranges.push([station, breadth, from_at, to_at]);
  }
  const floor = (name: string, text: string) => (values: unknown[]) => client.query({ name, text, values });
  const first = await timeEach(reels, own);
  const times: Record<string, Timing> = {
    // Whoever asks first reads from the disk what the others find in memory: it is told apart.
    'Reelkin, cold': first,
    'Reelkin, the statement': await timeEach(reels, own),
    'Reelkin, the use case': await timeEach(reels, (item) => whereUsed({ item, limit: 5000 })),
    floor: await timeEach(ranges, floor('floor', FLOOR)),
    'floor with places': await timeEach(ranges, floor('places', FLOOR_WITH_PLACES)),
  };
  if (hasTextbook) times.textbook = await timeEach(reels, (item) => askTextbook(client, item));
  if (duck !== null) times.DuckDB = await timeEach(reels, (item) => duck.whereUsed(item));
  if (graph !== null) times.graphology = await timeEach(reels, (item) => graph.whereUsed(item));
  return { rows, times };
}
