import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { resultSchema } from '@/lib/domain/events/vocabulary';
import { BREADTH_MAX } from '@/lib/domain/genealogy/breadth';
import type { SlotTimeline } from '@/lib/domain/genealogy/slot-timeline';
import { formatInstant } from '@/lib/domain/time';

/** Up to this many units are told one by one, more as a density in this many steps. */
const TICKS_MAX = 600;
const STEPS = 240;

const PASSES = `
  from generate_series(0, ${BREADTH_MAX}) as k(breadth)
  join read.pass p on p.station = $1 and p.breadth = k.breadth
    and p.high >= $2::timestamptz and p.high < $3::timestamptz + read.breadth_span(k.breadth)
    and p.at >= $2::timestamptz and p.at <= $3::timestamptz`;

const stepSchema = z.object({ step: z.number(), count: z.number() });
const tickSchema = z.object({
  unit: z.string(),
  at: z.number(),
  low: z.number(),
  high: z.number(),
  result: resultSchema,
});

/**
 * Units that were processed at a station during a time, in order; by pass_at_station, one range for each class of
 * breadth. Cost: the passes of that time, of which at most 600 are sent one by one.
 */
export async function findPasses(
  db: Queryable,
  { station, from, to }: { station: string; from: string; to: string },
): Promise<SlotTimeline['passes']> {
  const steps = await db.query(
    `select least(width_bucket(extract(epoch from p.at), extract(epoch from $2::timestamptz),
              extract(epoch from $3::timestamptz), ${STEPS}), ${STEPS}) - 1 as step, count(*) as count
     ${PASSES} group by 1`,
    [station, from, to],
  );
  const counts = Array.from({ length: STEPS }, () => 0);
  for (const row of steps.rows) {
    const { step, count } = stepSchema.parse(row);
    counts[step] = count;
  }
  const count = counts.reduce((sum, each) => sum + each, 0);
  if (count > TICKS_MAX) return { kind: 'density', count, counts };
  const { rows } = await db.query(
    `select p.unit, p.at, p.low, p.high, e.body ->> 'result' as result
     ${PASSES} join log.event e on e.id = p.event order by p.at, p.event`,
    [station, from, to],
  );
  const units = rows.map((row) => {
    const { unit, at, low, high, result } = tickSchema.parse(row);
    return { unit, at: formatInstant(at), low: formatInstant(low), high: formatInstant(high), result };
  });
  return { kind: 'units', count, units };
}
