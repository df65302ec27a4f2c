import pg from 'pg';

const { Pool, types } = pg;

/** Anything that answers a query: the pool, or one connection inside a transaction. */
export type Queryable = Pick<pg.ClientBase, 'query'>;

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
 * Opens a pool. Times come as microseconds since the epoch and int8 as numbers: both stay below 2^53 here.
 * With `role` every connection acts as that role from its first statement.
 */
export function openPool(options: { url: string; role?: string; connectionCountMax?: number }): pg.Pool {
  const settings = [
    '-c TimeZone=UTC',
    '-c DateStyle=ISO',
    '-c plan_cache_mode=force_generic_plan',
    '-c jit=off',
  ];
  if (options.role !== undefined) settings.push(`-c role=${options.role}`);
  return new Pool({
    connectionString: options.url,
    max: options.connectionCountMax ?? 10,
    options: settings.join(' '),
    types: {
      getTypeParser: (oid: number, format?: 'text' | 'binary') =>
        readers.get(oid) ?? types.getTypeParser(oid, format === 'binary' ? 'binary' : 'text'),
    },
  });
}
