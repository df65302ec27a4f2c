import { createHash } from 'node:crypto';
import type pg from 'pg';
import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const SNAPSHOT = 'begin isolation level repeatable read read only';

/** A writer's transaction. */
export type Writing = Queryable & {
  /** Whoever had the turn before this one too knows that nobody else has written since. */
  turn: Promise<number>;
  /** The connection itself, for COPY alone. */
  client: pg.ClientBase;
  /** Hands over a write whose answer nobody waits for before the commit; should it fail, so does the transaction. */
  defer<R>(write: Promise<R>): Promise<R>;
};

/** What a writer takes for granted, so that it need not wait for an answer: its turn, and that these ids are new. */
export type Expectation = { turn: number; freshIds: readonly string[] };

/**
 * Runs work as the only writer of the log: positions are committed in order, so a reader of the log by position
 * never skips a late commit, and a decision is made on the record that it is added to. Statements are prepared once
 * a connection. Begin and commit travel with the statements beside them. When something is not as expected, nothing
 * is written, and `isSurprise` knows the error.
 */
export function asWriter<T>(
  pool: pg.Pool,
  work: (db: Writing) => Promise<T>,
  expected?: Expectation,
): Promise<T> {
  return inTransaction(pool, 'begin', (db) => {
    const { turn = null, freshIds = null } = expected ?? {};
    const taken = db.query('select log.take_turn($1::bigint, $2::uuid[]) as turn', [turn, freshIds]);
    return work({ ...db, turn: db.defer(taken.then(({ rows }) => turnSchema.parse(rows[0]).turn)) });
  });
}

const turnSchema = z.object({ turn: z.number() });

/** Whether a transaction failed because something was not as its writer expected. */
export function isSurprise(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'RK001';
}

/**
 * Runs work on one snapshot of the record, so that an answer's parts agree with each other. Statements are prepared
 * once a connection.
 */
export function onSnapshot<T>(pool: pg.Pool, work: (db: Queryable) => Promise<T>): Promise<T> {
  return inTransaction(pool, SNAPSHOT, work);
}

/** As `onSnapshot`, for statements that each question composes anew: nobody will ask the same text again. */
export function onSnapshotOnce<T>(pool: pg.Pool, work: (db: Queryable) => Promise<T>): Promise<T> {
  return inTransaction(pool, SNAPSHOT, ({ client }) =>
    work({ query: (text, values) => client.query(text, values) }),
  );
}

type Transaction = Omit<Writing, 'turn'>;

async function inTransaction<T>(
  pool: pg.Pool,
  begin: string,
  work: (db: Transaction) => Promise<T>,
): Promise<T> {
  const client = await pool.connect();
  const pending: Promise<unknown>[] = [];
  let isBroken = false;
  try {
    const db = prepared(client);
    const defer = <R>(write: Promise<R>): Promise<R> => {
      pending.push(write);
      write.catch(() => undefined);
      return write;
    };
    const begun = defer(db.send(begin));
    if (!client.pipeline) await begun;
    const result = await work({ query: db.query, client, defer });
    const committed = db.send('commit');
    await allDone([...pending, committed]);
    // After a failed statement PostgreSQL answers a commit with a rollback, and calls that a success.
    if ((await committed).command !== 'COMMIT') throw new Error('PostgreSQL did not commit the transaction.');
    return result;
  } catch (error) {
    await client.query('rollback').catch(() => {
      isBroken = true;
    });
    // What follows a failed statement fails because of it: the first failure is the reason.
    await allDone(pending);
    throw error;
  } finally {
    client.release(isBroken);
  }
}

/** Waits for all of them, and throws what the first one that failed threw. */
async function allDone(promises: readonly Promise<unknown>[]): Promise<void> {
  const failed = (await Promise.allSettled(promises)).find(({ status }) => status === 'rejected');
  if (failed?.status === 'rejected') throw failed.reason;
}

const names = new Map<string, string>();

/**
 * A connection whose statements are prepared. Those asked for at one go leave in one write: on a fast network most of
 * a small transaction's time would go into the writes.
 */
function prepared(client: pg.PoolClient) {
  const { stream } = client.connection;
  let isHeld = false;
  const hold = () => {
    if (isHeld) return;
    isHeld = true;
    stream.cork();
    process.nextTick(() => {
      isHeld = false;
      stream.uncork();
    });
  };
  return {
    query: ((text, values) => {
      hold();
      return client.query({ name: nameOf(text), text, values: values ?? [] });
    }) satisfies Queryable['query'],
    send: (text: string) => {
      hold();
      return client.query(text);
    },
  };
}

/** Statements are named by their text, of which there are some hundreds at most: values are never part of it. */
function nameOf(text: string): string {
  const known = names.get(text);
  if (known !== undefined) return known;
  const name = createHash('sha256').update(text).digest('base64url').slice(0, 32);
  names.set(text, name);
  return name;
}
