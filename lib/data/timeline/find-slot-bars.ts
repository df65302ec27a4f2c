import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { Queryable } from '@/lib/data/pool';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import type { SlotBar } from '@/lib/domain/genealogy/slot-timeline';
import { formatInstant, instantOf } from '@/lib/domain/time';

/** Most stays that one timeline shows. */
const BARS_MAX = 2000;

const rowSchema = z.object({
  event: z.string(),
  slot: z.string(),
  item: z.string(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  from_at: z.number(),
  from_low: z.number(),
  from_high: z.number(),
  to_at: openInstantColumn,
  to_low: openInstantColumn,
  to_high: openInstantColumn,
  is_spliced: z.boolean(),
  grey_until: openInstantColumn.nullable(),
  total: z.number(),
});

type Span = { station: string; from: string; to: string };

/**
 * What stood in the slots of a station during a time, by slot and in order, with how many stays there were in all.
 *
 * Direction: slots of the station → the last mount before the time, and those begun during it, both short ranges of
 * (station, slot, from_at). Bound: the newest 2,000 stays.
 */
export async function findSlotBars(
  db: Queryable,
  { station, from, to }: Span,
): Promise<{ bars: (SlotBar & { slot: string })[]; total: number }> {
  const { rows } = await db.query(
    `select m.event, m.slot, m.item, i.kind, i.part, m.from_at, m.from_low, m.from_high, m.to_at, m.to_low, m.to_high,
            m.is_spliced, case when m.is_spliced then read.grey_until(m.event) end as grey_until, m.total
     from (
       select x.*, count(*) over () as total
       from read.slot_doubt s
       cross join lateral (
         (select b.* from read.mount b
          where b.station = s.station and b.slot = s.slot and b.from_at <= $2::timestamptz - s.doubt
          order by b.from_at desc, b.event desc limit 1)
         union all
         (select b.* from read.mount b
          where b.station = s.station and b.slot = s.slot
            and b.from_at > $2::timestamptz - s.doubt and b.from_at <= $3::timestamptz + s.doubt)
       ) x
       where s.station = $1 and x.from_at < x.to_at and x.from_low <= $3::timestamptz and x.to_high > $2::timestamptz
       order by x.from_at desc, x.event desc
       limit ${BARS_MAX}
     ) m
     left join read.item i on i.item = m.item
     order by m.slot, m.from_at, m.event`,
    [station, from, to],
  );
  const parsed = rows.map((row) => rowSchema.parse(row));
  return { bars: withGreyZones(parsed.map(toBar)), total: parsed[0]?.total ?? 0 };
}

/** While the grey zone of a splice lasts, the item before it in the slot cannot be excluded either. */
function withGreyZones<T extends SlotBar & { slot: string }>(bars: readonly T[]): T[] {
  return bars.map((bar, index) => {
    const next = bars[index + 1];
    if (next?.splice == null || next.slot !== bar.slot) return bar;
    return { ...bar, possible: { ...bar.possible, to: later(bar.possible.to, next.splice.greyUntil) } };
  });
}

function later(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return null;
  return instantOf(a) > instantOf(b) ? a : b;
}

function toBar(row: z.infer<typeof rowSchema>): SlotBar & { slot: string } {
  const certainFrom = Math.max(row.from_high, row.grey_until ?? Number.NEGATIVE_INFINITY);
  return {
    event: row.event,
    slot: row.slot,
    item: row.item,
    kind: row.kind,
    part: row.part,
    from: formatInstant(row.from_at),
    to: openTime(row.to_at),
    certain: certainFrom < row.to_low ? { from: formatInstant(certainFrom), to: openTime(row.to_low) } : null,
    possible: { from: formatInstant(row.from_low), to: openTime(row.to_high) },
    splice: row.is_spliced ? { greyUntil: openTime(row.grey_until ?? Number.POSITIVE_INFINITY) } : null,
  };
}

function openTime(us: number): string | null {
  return us === Number.POSITIVE_INFINITY ? null : formatInstant(us);
}
