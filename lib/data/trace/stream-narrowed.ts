import type pg from 'pg';
import Cursor from 'pg-cursor';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { prepareNarrow } from '@/lib/data/trace/conditions/prepare-narrow';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { readNarrowedUnit } from '@/lib/data/trace/narrow';
import type { Completeness } from '@/lib/domain/genealogy/answer';
import type { NarrowedUnit } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import type { Truth } from '@/lib/domain/genealogy/narrowing';

const ROWS_AT_ONCE = 2000;

type Row = { unit: NarrowedUnit; truths: Truth[] };

/**
 * What is missing, and every unit of a narrowed answer, sorted, page by page, both on one snapshot. Whoever
 * opens it reads it to its end or ends it by `return`: the connection is kept until then.
 */
export async function openNarrowed(
  pool: pg.Pool,
  conditions: readonly Condition[],
): Promise<{ completeness: Completeness; pages: AsyncGenerator<Row[]> }> {
  const client = await pool.connect();
  try {
    await client.query('begin isolation level repeatable read read only');
    const { plant } = await loadPlant(client);
    const completeness = await findCompleteness(client);
    const { text, values } = await prepareNarrow(client, conditions, plant);
    const cursor = client.query(new Cursor(`${text} select * from answer order by unit`, values));
    const pages = pagesOf(client, cursor);
    // Begun, so that ending it gives the connection back whatever has been read.
    await pages.next();
    return { completeness, pages };
  } catch (error) {
    client.release(true);
    throw error;
  }
}

/** Yields nothing first, then the pages. */
async function* pagesOf(client: pg.PoolClient, cursor: Cursor): AsyncGenerator<Row[]> {
  let isDone = false;
  try {
    yield [];
    for (let rows = await cursor.read(ROWS_AT_ONCE); rows.length > 0; rows = await cursor.read(ROWS_AT_ONCE))
      yield rows.map(readNarrowedUnit);
    await cursor.close();
    await client.query('commit');
    isDone = true;
  } finally {
    // A reader that went away leaves the statement half read: such a connection is not used again.
    client.release(!isDone);
  }
}
