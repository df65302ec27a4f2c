import { createHash } from 'node:crypto';
import type pg from 'pg';
import type { Queryable } from '@/lib/data/pool';

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
 * never skips a late commit, and a decision is made on the record that it is added to. Statements are prepared once
 * a connection.
 */
export function asWriter<T>(pool: pg.Pool, work: (db: Queryable) => Promise<T>): Promise<T> {
  const lock = `select pg_advisory_xact_lock(${WRITER_LOCK})`;
  return inTransaction(pool, { begin: 'begin', lock }, (client) => work(prepared(client)));
}

/**
 * Runs work on one snapshot of the record, so that an answer's parts agree with each other. Statements are prepared
 * once a connection.
 */
export function onSnapshot<T>(pool: pg.Pool, work: (db: Queryable) => Promise<T>): Promise<T> {
  const begin = 'begin isolation level repeatable read read only';
  return inTransaction(pool, { begin }, (client) => work(prepared(client)));
}

/** As `onSnapshot`, for statements that each question composes anew: nobody will ask the same text again. */
export function onSnapshotOnce<T>(pool: pg.Pool, work: (db: pg.PoolClient) => Promise<T>): Promise<T> {
  return inTransaction(pool, { begin: 'begin isolation level repeatable read read only' }, work);
}

const names = new Map<string, string>();

function prepared(client: pg.PoolClient): Queryable {
  return { query: (text, values) => client.query({ name: nameOf(text), text, values: values ?? [] }) };
}

/** Statements are named by their text, of which there are some hundreds at most: values are never part of it. */
function nameOf(text: string): string {
  const known = names.get(text);
  if (known !== undefined) return known;
  const name = createHash('sha256').update(text).digest('base64url').slice(0, 32);
  names.set(text, name);
  return name;
}
