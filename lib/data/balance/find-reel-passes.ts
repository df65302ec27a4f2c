import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { GREY_UNTIL } from '@/lib/data/trace/slot-doubt';
import type { ReelPass } from '@/lib/domain/balance/ledger';
import { BREADTH_MAX } from '@/lib/domain/genealogy/breadth';

const rowSchema = z.object({
  event: z.string(),
  unit: z.string(),
  low: z.number(),
  high: z.number(),
  pieces: z.number(),
  is_certain: z.boolean(),
});

/** The passes of stays (by the events that began them) that draw from their slot, in order; a reel feeds some thousands. */
export async function findReelPasses(
  db: Queryable,
  stays: readonly string[],
): Promise<Map<string, ReelPass[]>> {
  const passes = new Map<string, ReelPass[]>(stays.map((stay) => [stay, []]));
  if (stays.length === 0) return passes;
  const { rows } = await db.query(
    `select m.event, p.unit, p.low, p.high, cardinality(b.positions) as pieces,
            p.low >= greatest(m.from_high, z.grey_until) and p.high < m.to_low as is_certain
     from read.mount m
     left join lateral (${GREY_UNTIL}) z on true
     cross join generate_series(0, ${BREADTH_MAX}) as k(breadth)
     join read.pass p on p.station = m.station and p.breadth = k.breadth
       and p.high >= m.from_low and p.high < m.to_high + read.breadth_span(k.breadth) and p.low < m.to_high
     join read.unit u on u.unit = p.unit
     join read.bom_slot b
       on b.station = m.station and b.slot = m.slot and b.product = u.product and b.revision = u.revision
     where m.event = any($1::uuid[])
     order by m.event, p.low, p.high, p.unit`,
    [stays],
  );
  for (const row of rows) {
    const { event, unit, low, high, pieces, is_certain: isCertain } = rowSchema.parse(row);
    passes.get(event)?.push({ unit, lowUs: low, highUs: high, pieces, isCertain });
  }
  return passes;
}
