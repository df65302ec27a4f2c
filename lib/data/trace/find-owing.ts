import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { Owing } from '@/lib/domain/genealogy/answer';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  device: z.string(),
  missing: z.array(z.tuple([z.number(), z.number()])),
  last_seen_at: z.number(),
});

/** Devices whose numbers have gaps up to the highest that has arrived, with the gaps as inclusive ranges. */
export async function findOwing(db: Queryable): Promise<Owing[]> {
  const { rows } = await db.query(
    `select d.device, d.last_seen_at, json_agg(json_build_array(lower(r), upper(r) - 1) order by lower(r)) as missing
     from read.device d
     cross join lateral unnest(int8multirange(int8range(1, upper(d.received))) - d.received) as r
     group by d.device
     order by d.device`,
  );
  return rows.map((row) => {
    const { device, missing, last_seen_at } = rowSchema.parse(row);
    return { device, missing, lastSeenAt: formatInstant(last_seen_at) };
  });
}
