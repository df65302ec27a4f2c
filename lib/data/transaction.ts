import type pg from 'pg';

// Any constant will do; it names the one writer of the log in this database.
const WRITER_LOCK = 7_310_573;

async function inTransaction<T>(
  pool: pg.Pool,
  options: { begin: string; lock?: string },
  work: (client: pg.PoolClient) => Promise<T>,
): Promise<T> {
  const client = await pool.connect();
  let isBroken = false;
  try {
    await client.query(options.lock === undefined ? options.begin : `${options.begin}; ${options.lock}`);
    const result = await work(client);
    await client.query('commit');
    return result;
  } catch (error) {
    await client.query('rollback').catch(() => {
      isBroken = true;
    });
    throw error;
  } finally {
    client.release(isBroken);
  }
}

/**
 * Runs work as the only writer of the log: positions are committed in order, so a reader of the log by position
 * never skips a late commit, and a decision is made on the record that it is added to.
 */
export function asWriter<T>(pool: pg.Pool, work: (client: pg.PoolClient) => Promise<T>): Promise<T> {
  return inTransaction(pool, { begin: 'begin', lock: `select pg_advisory_xact_lock(${WRITER_LOCK})` }, work);
}

/** Runs work on one snapshot of the record, so that an answer's parts agree with each other. */
export function onSnapshot<T>(pool: pg.Pool, work: (client: pg.PoolClient) => Promise<T>): Promise<T> {
  return inTransaction(pool, { begin: 'begin isolation level repeatable read read only' }, work);
}
