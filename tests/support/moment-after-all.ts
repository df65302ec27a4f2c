import { database } from '@/lib/server/database';

/** A moment (RFC 3339) by which everything recorded so far had arrived, and nothing that is recorded later. */
export async function momentAfterAll(): Promise<string> {
  const { rows } = await database().pool.query('select clock_timestamp() as now');
  const moment = new Date(Math.ceil(Number(rows[0].now) / 1000)).toISOString();
  while (Date.now() <= Date.parse(moment)) await new Promise((resolve) => setTimeout(resolve, 1));
  return moment;
}
