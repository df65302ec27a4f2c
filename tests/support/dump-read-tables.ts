import type pg from 'pg';
import { READ_TABLES } from '@/lib/data/rebuild';

/** Every row of every read table as text, sorted: equal dumps are equal tables, bit for bit. */
export async function dumpReadTables(pool: pg.Pool): Promise<Record<string, string[]>> {
  const dump: Record<string, string[]> = {};
  for (const table of READ_TABLES) {
    const { rows } = await pool.query(`select t::text as line from read.${table} t order by 1`);
    dump[table] = rows.map((row: { line: string }) => row.line);
  }
  return dump;
}
