import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { ItemFacts } from '@/lib/data/trace/find-item-facts';
import { bitOf, GREY_UNTIL, readDoubt, slotDoubt } from '@/lib/data/trace/slot-doubt';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import { passOf } from '@/lib/domain/genealogy/draw-rows';
import type { Overlap } from '@/lib/domain/genealogy/unit-draws';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  pass: z.string(),
  event: z.string(),
  slot: z.string(),
  item: z.string(),
  is_certain: z.boolean(),
  doubt: z.number().int(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  lot: z.string().nullable(),
});

/** What stood in slots, by id of the pass, and what is known of each of those items: null of one never received. */
export type Overlaps = { byPass: Map<string, Overlap[]>; items: Map<string, ItemFacts | null> };

/**
 * What stood in the slots of the stations while units were processed, by id of the pass.
 *
 * Direction: pass → slots of its station → the last mount begun by its end, which nearly always began before it; only
 * where that one came during the pass, the others of that time and the last one before it. Intervals of a slot follow
 * each other, so all are short ranges of (station, slot, from_at).
 */
export async function findOverlaps(db: Queryable, events: readonly LoggedEvent[]): Promise<Overlaps> {
  const passes = events.flatMap((event) =>
    event.type === 'unit.processed' ? [{ event: event.id, atUs: event.atUs, ...passOf(event) }] : [],
  );
  const found: Overlaps = { byPass: new Map(), items: new Map() };
  if (passes.length === 0) return found;
  const { rows } = await db.query(
    `with recursive stay as (
       select p.pass, p.at, p.low, p.high, m.event, m.station, m.slot, m.item, m.from_at, m.from_low,
              greatest(m.from_high, z.grey_until) as from_high,
              m.to_at, m.to_low, m.to_high, z.grey_until
       from unnest($1::uuid[], $2::text[], $3::timestamptz[], $4::timestamptz[], $5::timestamptz[])
         as p(pass, station, at, low, high)
       join read.slot_doubt s on s.station = p.station
       cross join lateral (
         select x.* from read.mount x
         where x.station = s.station and x.slot = s.slot and x.from_at <= p.high + s.doubt
         order by x.from_at desc, x.event desc limit 1
       ) latest
       cross join lateral (
         select latest.*
         union all
         select x.* from read.mount x
         where latest.from_at > p.low - s.doubt and x.station = s.station and x.slot = s.slot
           and x.from_at > p.low - s.doubt and (x.from_at, x.event) < (latest.from_at, latest.event)
         union all
         (select x.* from read.mount x
          where latest.from_at > p.low - s.doubt and x.station = s.station and x.slot = s.slot
            and x.from_at <= p.low - s.doubt
          order by x.from_at desc, x.event desc limit 1)
       ) m
       left join lateral (${GREY_UNTIL}) z on true
     ),
     -- Back through the splices whose grey zone the pass is in: a zone never ends after that of a later splice.
     ending as (
       select pass, low, high, event, station, slot, from_at, from_low, to_at, grey_until
       from stay where grey_until > low
       union
       select e.pass, e.low, e.high, m.event, m.station, m.slot, m.from_at, m.from_low, m.to_at, z.grey_until
       from ending e
       cross join lateral (
         select x.* from read.mount x
         where x.station = e.station and x.slot = e.slot and (x.from_at, x.event) < (e.from_at, e.event)
         order by x.from_at desc, x.event desc limit 1
       ) m
       left join lateral (${GREY_UNTIL}) z on true
       where z.grey_until > e.low
     )
     select o.*, i.kind, i.part, i.lot
     from (
       select m.pass, m.event, m.slot, m.item, m.low >= m.from_high and m.high < m.to_low as is_certain,
              ${slotDoubt('m', 'm')} as doubt
       from stay m
       where m.from_at < m.to_at and m.high >= m.from_low and m.low < m.to_high
       union
       select e.pass, e.event, e.slot, g.item, false, ${bitOf('splice')}
       from ending e join read.splice g on g.event = e.event
       where e.from_at < e.to_at and e.high >= e.from_low
     ) o
     left join read.item i on i.item = o.item
     order by o.pass, o.slot, o.event, o.item`,
    [
      passes.map(({ event }) => event),
      passes.map(({ station }) => station),
      passes.map(({ atUs }) => formatInstant(atUs)),
      passes.map(({ lowUs }) => formatInstant(lowUs)),
      passes.map(({ highUs }) => formatInstant(highUs)),
    ],
  );
  for (const row of rows) {
    const { pass, event, slot, item, is_certain: isCertain, doubt, kind, part, lot } = rowSchema.parse(row);
    const overlap = { event, slot, item, because: isCertain ? [] : readDoubt(doubt) };
    const sofar = found.byPass.get(pass);
    if (sofar === undefined) found.byPass.set(pass, [overlap]);
    else sofar.push(overlap);
    found.items.set(item, kind === null ? null : { kind, part, lot });
  }
  return found;
}
