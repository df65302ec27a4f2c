import type pg from 'pg';
import { APPLICATION_ROLE, openPool } from '@/lib/data/pool';
import { AppendQueue } from '@/lib/data/record/append-queue';

type Database = { pool: pg.Pool; queue: AppendQueue };

// One pool and one way into the log for the process, whichever bundle asks first.
declare global {
  var reelkinDatabase: Database | undefined;
}

/** The server's connection pool and its queue into the log, opened on first use; reads DATABASE_URL. */
export function database(): Database {
  globalThis.reelkinDatabase ??= open();
  return globalThis.reelkinDatabase;
}

function open(): Database {
  const url = process.env.DATABASE_URL;
  if (url === undefined || url === '')
    throw new Error('DATABASE_URL is not set: start the server with npm start.');
  const pool = openPool({ url, role: APPLICATION_ROLE });
  // A connection that breaks while idle is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined);
  return { pool, queue: new AppendQueue({ pool, clock: () => Date.now() * 1000 }) };
}
