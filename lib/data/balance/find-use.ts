import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { GREY_UNTIL } from '@/lib/data/trace/slot-doubt';
import type { Period, Range } from '@/lib/domain/balance/ledger';
import { BREADTH_MAX } from '@/lib/domain/genealogy/breadth';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  ordinal: z.number(),
  certain: z.number(),
  possible: z.number(),
  is_known: z.boolean(),
});

/**
 * The pieces that the record gives to units from each period's reel: certainly, and at most. Counted are the passes of
 * its stays, those in the grey zone of the splice that ended it, and the parts that were scanned for a unit. Where the
 * pieces of some use are not known, there is no upper bound.
 *
 * Direction: period → stays of its reel → passes within both → the unit's BOM line of that slot. Cost: one unit
 * look-up for each pass.
 */
export async function findUse(db: Queryable, periods: readonly Period[]): Promise<Range[]> {
  if (periods.length === 0) return [];
  const given = periods.map(({ item, from, to }, ordinal) => ({
    ordinal,
    item,
    from_low: formatInstant(from.lowUs),
    from_high: formatInstant(from.highUs),
    to_low: to === null ? 'infinity' : formatInstant(to.lowUs),
    to_high: to === null ? 'infinity' : formatInstant(to.highUs),
  }));
  const { rows } = await db.query(
    `with period as materialized (
       select * from jsonb_to_recordset($1::jsonb) as p(ordinal integer, item text, from_low timestamptz,
         from_high timestamptz, to_low timestamptz, to_high timestamptz)
     ),
     stay as materialized (
       select r.ordinal, m.station, m.slot,
              greatest(m.from_low, r.from_low) as from_low,
              greatest(m.from_high, z.grey_until, r.from_high) as from_high,
              least(m.to_low, r.to_low) as to_low, least(m.to_high, r.to_high) as to_high
       from period r
       join read.mount m on m.item = r.item collate "C" and m.from_at < m.to_at
       left join lateral (${GREY_UNTIL}) z on true
       union all
       select r.ordinal, m.station, m.slot, greatest(m.from_low, r.from_low), 'infinity', '-infinity',
              least(z.grey_until, r.to_high)
       from period r
       join read.splice g on g.item = r.item collate "C"
       join read.mount m on m.event = g.event and m.from_at < m.to_at
       cross join lateral (${GREY_UNTIL}) z
       where z.grey_until is not null
     ),
     used as (
       select m.ordinal, cardinality(b.positions) as pieces, p.low >= m.from_high and p.high < m.to_low as is_certain
       from stay m
       cross join generate_series(0, ${BREADTH_MAX}) as k(breadth)
       join read.pass p on p.station = m.station and p.breadth = k.breadth
         and p.high >= m.from_low and p.high < m.to_high + read.breadth_span(k.breadth) and p.low < m.to_high
       join read.unit u on u.unit = p.unit
       join read.bom_slot b
         on b.station = m.station and b.slot = m.slot and b.product = u.product and b.revision = u.revision
       where m.from_low < m.to_high
       union all
       select r.ordinal,
              case d.source
                when 'used' then coalesce((e.body -> 'used' -> d.ordinal ->> 'quantity')::double precision,
                                          cardinality(d.positions))
                else 1
              end,
              e.at - x.doubt >= r.from_high and e.at + x.doubt < r.to_low
       from period r
       join read.direct_draw d on d.item = r.item collate "C"
       join log.event e on e.id = d.event
       cross join lateral (select make_interval(secs => e.uncertainty_ms / 1000.0) as doubt) x
       where e.at + x.doubt >= r.from_low and e.at - x.doubt < r.to_high
     )
     select ordinal, coalesce(sum(pieces) filter (where is_certain), 0)::double precision as certain,
            sum(pieces)::double precision as possible, bool_and(pieces > 0) as is_known
     from used
     group by ordinal`,
    [JSON.stringify(given)],
  );
  const used: Range[] = periods.map(() => ({ min: 0, max: 0 }));
  for (const row of rows) {
    const { ordinal, certain, possible, is_known: isKnown } = rowSchema.parse(row);
    used[ordinal] = { min: certain, max: isKnown ? possible : Number.POSITIVE_INFINITY };
  }
  return used;
}
