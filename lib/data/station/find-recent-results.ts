import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { resultSchema } from '@/lib/domain/events/vocabulary';
import type { RecentResult } from '@/lib/domain/station/station-picture';

const rowSchema = z.object({
  event: z.string(),
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  result: resultSchema.nullable(),
  at: z.string(),
  operator: z.string().nullable(),
  defects: z.array(z.object({ code: z.string(), position: z.string().optional() })),
  is_voided: z.boolean(),
  is_held: z.boolean(),
});

/**
 * The last results and sign-offs given at a station, newest first, voided ones too. Direction: event_at_station and
 * signing_at_station backwards, `count` rows of each; ties of time by id.
 */
export async function findRecentResults(
  db: Queryable,
  station: string,
  count: number,
): Promise<RecentResult[]> {
  const { rows } = await db.query(
    `select e.id as event, e.unit, u.product, u.revision, e.body ->> 'result' as result, e.at_sent as at, e.operator,
       coalesce(e.body -> 'defects', '[]') as defects,
       exists (select from read.voided v where v.event = e.id) as is_voided,
       exists (select from read.hold h where h.target_kind = 'unit' and h.target = e.unit
                 and h.released_at = 'infinity') as is_held
     from (
       (select * from log.event where type = 'unit.processed' and station = $1 order by at desc, id desc limit $2)
       union all
       (select * from log.event where type = 'unit.signed' and station = $1 order by at desc, id desc limit $2)
     ) e left join read.unit u on u.unit = e.unit
     order by e.at desc, e.id desc
     limit $2`,
    [station, count],
  );
  return rows.map((row) => {
    const { defects, is_voided: isVoided, is_held: isHeld, ...result } = rowSchema.parse(row);
    return {
      ...result,
      isVoided,
      isHeld,
      defects: defects.map(({ code, position = null }) => ({ code, position })),
    };
  });
}
