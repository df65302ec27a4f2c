import type pg from 'pg';
import Cursor from 'pg-cursor';
import { prepareWhereUsed } from '@/lib/data/trace/prepare-where-used';
import { readUsedUnit } from '@/lib/data/trace/where-used';
import type { UsedUnit } from '@/lib/domain/genealogy/answer';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

const ROWS_AT_ONCE = 2000;

/** Every unit of an answer, sorted, page by page: PostgreSQL keeps the answer, the server holds two pages of it. */
export async function* streamWhereUsed(
  pool: pg.Pool,
  question: WhereUsedQuestion,
): AsyncGenerator<UsedUnit[]> {
  const { text, values } = await prepareWhereUsed(pool, question);
  const client = await pool.connect();
  let isDone = false;
  const cursor = client.query(new Cursor(`${text} select * from answer order by unit`, values));
  // The next page is on its way while one is handed over.
  let page = cursor.read(ROWS_AT_ONCE);
  try {
    for (let rows = await page; rows.length > 0; rows = await page) {
      page = cursor.read(ROWS_AT_ONCE);
      page.catch(() => undefined);
      yield rows.map(readUsedUnit);
    }
    isDone = true;
  } finally {
    await page.catch(() => undefined);
    await cursor.close().catch(() => undefined);
    // A reader that went away leaves the statement half read: such a connection is not used again.
    client.release(!isDone);
  }
}
