import { APPLICATION_ROLE, openPool } from '@/lib/data/pool';
import { AppendQueue } from '@/lib/data/record/append-queue';
import { tellChange } from '@/lib/server/changes';

type ConnectionPool = ReturnType<typeof openPool>;
type Database = {
  pool: ConnectionPool;
  streaming: ConnectionPool;
  queue: AppendQueue;
  end: () => Promise<void>;
};

// One pool and one way into the log for the process, whichever bundle asks first.
declare global {
  var reelkinDatabase: Database | undefined;
}

/** The server's connections and its queue into the log, opened on first use; reads DATABASE_URL. */
export function database(): Database {
  globalThis.reelkinDatabase ??= open();
  return globalThis.reelkinDatabase;
}

function open(): Database {
  const url = process.env.DATABASE_URL;
  if (url === undefined || url === '')
    throw new Error('DATABASE_URL is not set: start the server with npm start.');
  const role = APPLICATION_ROLE;
  const pool = openPool({ url, role, use: 'reading' });
  const streaming = openPool({ url, role, use: 'plain', connectionCountMax: 4 });
  const writing = openPool({ url, role, use: 'writing', connectionCountMax: 1 });
  const pools = [pool, streaming, writing];
  return {
    pool,
    streaming,
    queue: new AppendQueue({ pool: writing, clock: () => Date.now() * 1000, onCommitted: tellChange }),
    end: async () => {
      await Promise.all(pools.map((each) => each.end()));
    },
  };
}
