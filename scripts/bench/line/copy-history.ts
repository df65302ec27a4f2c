import { z } from 'zod';
import { openPool } from '@/lib/data/pool';
import { setIndexesAside } from '@/lib/data/rebuild/set-indexes-aside';
import { refreshAllSlots } from '@/lib/data/record/refresh-slot';
import { asWriter, type Writing } from '@/lib/data/transaction';
import { STATIONS } from '@/scripts/bench/line/bench-plant';
import { BEGIN_MS, passedMs } from '@/scripts/bench/line/generate-events';

/** Largest history that goes through the log; beyond it, the read tables of this one are copied. */
export const LOGGED_UNITS_MAX = 1_000_000;

/** Tables whose rows are not about the plant. */
const COPIED = ['unit', 'item', 'mount', 'pass', 'direct_draw', 'removal', 'salvage', 'joining', 'container'];

/** Where the number begins in each kind of code; its highest digit is free in a history of a million units. */
const NUMBER_AT: readonly (readonly [pattern: string, at: number])[] = [
  ['WX4C%', 5],
  ['R__-%', 5],
  ['L__-%', 5],
  ['CAB%', 4],
  ['CT%', 3],
  ['PL%', 3],
  ['LP%', 3],
  ['ST-%', 4],
  ['PJ-%', 4],
  ['PF-%', 4],
];
const CODES = new Set(
  'unit inner_unit outer_unit outermost from_unit item lot container inside own_shipment shipment'.split(' '),
);

const columnSchema = z.object({ name: z.string(), type: z.string() });

/**
 * Makes a history of `LOGGED_UNITS_MAX` units so many times as large: its read tables are copied in SQL, each copy with
 * codes and events of its own, and begun when the one before it had ended. The log does not grow: on a disk of some 80
 * GB there is no room for five million units of it. Answers about units, items and places are those of a plant of that
 * size; a unit's own record (its log, its folded state) is that of the first copy.
 */
export async function copyHistory(
  ownerUrl: string,
  times: number,
  report: (line: string) => void,
): Promise<void> {
  const pool = openPool({ url: ownerUrl, connectionCountMax: 1, use: 'plain' });
  try {
    await asWriter(pool, async (db) => {
      await db.turn;
      await db.query(`set local maintenance_work_mem = '1GB'`);
      const makeIndexes = await setIndexesAside(db, 'read');
      for (const table of COPIED) {
        await copyTable(db, table, times);
        report(`copied: ${table}`);
      }
      await makeIndexes();
      report('indexes made; joining the copies');
      // What stood open at the end of a copy ends with the first mount of the next one.
      await refreshAllSlots(db);
    });
  } finally {
    await pool.end();
  }
}

/** The code of a thing in a copy, the first being 0. */
export function copiedCode(code: string, copy: number): string {
  if (copy === 0) return code;
  const found = NUMBER_AT.find(([pattern]) =>
    new RegExp(`^${pattern.replaceAll('_', '.').replace('%', '.*')}$`).test(code),
  );
  if (found === undefined) return `${code}+${copy}`;
  return `${code.slice(0, found[1] - 1)}${copy}${code.slice(found[1])}`;
}

/** All copies of a table in one statement, one after the other: it sees only what was there before. */
async function copyTable(db: Writing, table: string, times: number): Promise<void> {
  const { rows } = await db.query(
    `select attname as name, format_type(atttypid, atttypmod) as type from pg_attribute
     where attrelid = $1::regclass and attnum > 0 and not attisdropped order by attnum`,
    [`read.${table}`],
  );
  const columns = rows.map((row) => columnSchema.parse(row));
  const names = columns.map(({ name }) => name).join(', ');
  const copies = Array.from({ length: times - 1 }, (_, index) => {
    const cells = columns.map(({ name, type }) => copiedCell(name, type, index + 1));
    return `select ${cells.join(', ')} from read.${table}`;
  });
  await db.query(`insert into read.${table} (${names}) ${copies.join(' union all ')}`);
}

function copiedCell(name: string, type: string, copy: number): string {
  if (type === 'timestamp with time zone') return `${name} + interval '${(copy * spanMs()) / 1000} seconds'`;
  // The last event of all stands for "never".
  if (type === 'uuid')
    return `case when ${name} > 'f0000000-0000-0000-0000-000000000000' then ${name}
              else overlay(${name}::text placing '${copy}' from 18 for 1)::uuid end`;
  if (!CODES.has(name)) return name;
  const cases = NUMBER_AT.map(
    ([pattern, at]) =>
      `when ${name} like '${pattern}' then overlay(${name} placing '${copy}' from ${at} for 1)`,
  );
  return `case ${cases.join(' ')} else ${name} || '+${copy}' end`;
}

/** From the first event of a copy to well after its last. */
function spanMs(): number {
  return passedMs(LOGGED_UNITS_MAX, STATIONS.length) - BEGIN_MS + 3_600_000;
}
