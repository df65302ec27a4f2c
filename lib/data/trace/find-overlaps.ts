import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { passOf } from '@/lib/domain/genealogy/draw-rows';
import type { Overlap } from '@/lib/domain/genealogy/unit-draws';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  pass: z.string(),
  event: z.string(),
  slot: z.string(),
  item: z.string(),
  is_certain: z.boolean(),
});

/**
 * What stood in the slots of the stations while units were processed, by id of the pass.
 *
 * Direction: pass → slots of its station → the last mount before the pass, and those begun during it. Intervals of a
 * slot follow each other, so both are short ranges of (station, slot, from_at). `until` (an RFC 3339 time or infinity)
 * leaves out mounts and ends that happened later.
 */
export async function findOverlaps(
  db: Queryable,
  events: readonly LoggedEvent[],
  until: string,
): Promise<Map<string, Overlap[]>> {
  const passes = events.flatMap((event) => {
    if (event.type !== 'unit.processed') return [];
    const { station, lowUs, highUs } = passOf(event);
    return [{ pass: event.id, station, low: formatInstant(lowUs), high: formatInstant(highUs) }];
  });
  const found = new Map<string, Overlap[]>();
  if (passes.length === 0) return found;
  const { rows } = await db.query(
    `select p.pass, m.event, m.slot, m.item, p.low >= m.from_high and p.high < m.to_low as is_certain
     from jsonb_to_recordset($1::jsonb) as p(pass uuid, station text, low timestamptz, high timestamptz)
     join read.slot_doubt s on s.station = p.station
     cross join lateral (
       (select x.* from read.mount x
        where x.station = s.station and x.slot = s.slot and x.from_at <= p.low - s.doubt
        order by x.from_at desc, x.event desc limit 1)
       union all
       (select x.* from read.mount x
        where x.station = s.station and x.slot = s.slot
          and x.from_at > p.low - s.doubt and x.from_at <= p.high + s.doubt)
     ) x
     cross join lateral (
       select x.event, x.slot, x.item, x.from_at, x.from_low, x.from_high,
              case when x.to_at <= $2::timestamptz then x.to_at else 'infinity' end as to_at,
              case when x.to_at <= $2::timestamptz then x.to_low else 'infinity' end as to_low,
              case when x.to_at <= $2::timestamptz then x.to_high else 'infinity' end as to_high
     ) m
     where m.from_at <= $2::timestamptz and m.from_at < m.to_at and p.high >= m.from_low and p.low < m.to_high
     order by p.pass, m.slot, m.from_at, m.event`,
    [JSON.stringify(passes), until],
  );
  for (const row of rows) {
    const { pass, event, slot, item, is_certain: isCertain } = rowSchema.parse(row);
    found.set(pass, [...(found.get(pass) ?? []), { event, slot, item, isCertain }]);
  }
  return found;
}
