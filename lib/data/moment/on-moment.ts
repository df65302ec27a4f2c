import type pg from 'pg';
import { z } from 'zod';
import { MomentRecord } from '@/lib/data/moment/moment-record';
import type { Queryable } from '@/lib/data/pool';
import { formatInstant } from '@/lib/domain/time';

const positionSchema = z.object({ position: z.number().nullable() });

/**
 * Runs work on the record as it was when everything up to `knownAtUs` had arrived, of what had happened by `atUs`
 * (microseconds; infinite for no limit). Nothing of it stays.
 */
export async function onMoment<T>(
  pool: pg.Pool,
  { knownAtUs, atUs }: { knownAtUs: number; atUs: number },
  work: (record: MomentRecord) => Promise<T>,
): Promise<T> {
  const client = await pool.connect();
  let isBroken = false;
  try {
    await client.query('begin isolation level repeatable read');
    const knownTo = await findKnownTo(client, knownAtUs);
    return await work(await MomentRecord.open(client, { knownTo, knownAtUs, untilUs: atUs }));
  } finally {
    await client.query('rollback').catch(() => {
      isBroken = true;
    });
    client.release(isBroken);
  }
}

/** Position in the log up to which everything had arrived by a time (microseconds, infinite for now). */
export async function findKnownTo(db: Queryable, knownAtUs: number): Promise<number> {
  const { rows } = await db.query(
    'select max(position) as position from log.event where recorded_at <= $1::timestamptz',
    [knownAtUs === Number.POSITIVE_INFINITY ? 'infinity' : formatInstant(knownAtUs)],
  );
  return positionSchema.parse(rows[0]).position ?? 0;
}
