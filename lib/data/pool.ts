import pg from 'pg';

const { Pool, types } = pg;

/** Anything that answers a query: the pool, or one connection inside a transaction. */
export type Queryable = {
  query(text: string, values?: unknown[]): Promise<{ rows: unknown[]; rowCount: number | null }>;
};

/** Name of the database role that the running application takes; it can only add to the log. */
export const APPLICATION_ROLE = 'reelkin_app';

const TIMESTAMP = /^(\d{4,6})-(\d{2})-(\d{2}) (\d{2}):(\d{2}):(\d{2})(?:\.(\d{1,6}))?\+00$/;

/** A timestamptz as PostgreSQL prints it in UTC, in microseconds since the epoch; infinity stays infinite. */
export function readTimestamp(text: string): number {
  if (text === 'infinity') return Number.POSITIVE_INFINITY;
  const match = TIMESTAMP.exec(text);
  if (match === null) throw new Error(`PostgreSQL sent a time that is not in UTC: ${text}`);
  const [, year, month, day, hour, minute, second, fraction = ''] = match;
  const ms = Date.UTC(
    Number(year),
    Number(month) - 1,
    Number(day),
    Number(hour),
    Number(minute),
    Number(second),
  );
  return ms * 1000 + Number(fraction.padEnd(6, '0'));
}

const readers = new Map<number, (text: string) => unknown>([
  [types.builtins.INT8, Number],
  [types.builtins.TIMESTAMPTZ, readTimestamp],
]);

/**
 * What a pool's connections are for. Statements asked for together travel together, but on plain connections, which
 * take one after the other, as cursors and Prisma want it. The writer's latency is everybody's, so its plans are made once; all of its
 * statements find rows by key, so none may scan a table, however small that was when the plan was made.
 */
export type PoolUse = 'reading' | 'writing' | 'plain';

/**
 * What every connection of ours asks for. On memory and solid disks a page costs the same wherever it stands: with
 * PostgreSQL's own guess, look-ups by key would become scans of whole tables that grow with the plant.
 */
export const SESSION_SETTINGS = [
  '-c TimeZone=UTC',
  '-c DateStyle=ISO',
  '-c jit=off',
  '-c random_page_cost=1.1',
] as const;

/**
 * Opens a pool. Times come as microseconds since the epoch and int8 as numbers: both stay below 2^53 here.
 * With `role` every connection acts as that role from its first statement.
 */
export function openPool(options: {
  url: string;
  use: PoolUse;
  role?: string;
  connectionCountMax?: number;
}): pg.Pool {
  const { url, use, role, connectionCountMax = 10 } = options;
  const settings: string[] = [...SESSION_SETTINGS];
  if (role !== undefined) settings.push(`-c role=${role}`);
  if (use === 'writing') settings.push('-c plan_cache_mode=force_generic_plan', '-c enable_seqscan=off');
  const pool = new Pool({
    connectionString: url,
    max: connectionCountMax,
    pipeline: use !== 'plain',
    options: settings.join(' '),
    types: {
      getTypeParser: (oid: number, format?: 'text' | 'binary') =>
        readers.get(oid) ?? types.getTypeParser(oid, format === 'binary' ? 'binary' : 'text'),
    },
  });
  // A connection that breaks between two statements tells nobody but its listeners, and the process if it has none;
  // whoever has it learns of it from the next statement.
  pool.on('connect', (client) => client.on('error', () => undefined));
  // One that breaks while idle is replaced by its pool; without a listener it would end the process.
  pool.on('error', () => undefined);
  return pool;
}
