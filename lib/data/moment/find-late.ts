import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import type { Slot } from '@/lib/data/moment/admit-slots';
import type { LateNumber } from '@/lib/data/moment/find-late-numbers';
import type { LateEvent } from '@/lib/data/moment/late-event';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { momentText } from '@/lib/data/moment/moment-tables';
import type { EventType } from '@/lib/domain/events/catalogue';
import { subjectUnit } from '@/lib/domain/events/logged-event';

/** What can bear on an answer at or after a moment. */
export type Scope = {
  units: readonly string[];
  /** Where passes count; null for everywhere. */
  stations: readonly string[] | null;
  slots: readonly Slot[];
  items: readonly string[];
  /** Whether counts of the items do. */
  weighs: boolean;
};

const OF_UNITS: readonly EventType[] = [
  'unit.started',
  'unit.processed',
  'unit.joined',
  'unit.separated',
  'part.removed',
  'part.installed',
];
const OF_SLOTS: readonly EventType[] = ['item.mounted', 'item.unmounted', 'item.spliced'];
const OF_COUNTS: readonly EventType[] = ['item.counted', 'item.retired', 'item.unmounted'];

const rowSchema = z.object({
  position: z.number(),
  recorded_at: z.number(),
  recorded_by: z.string(),
  named_unit: z.string().nullable(),
});
const unitSchema = z.object({ unit: z.string() });

/**
 * What arrived after a moment, up to a position, and can change who is in an answer and how: events of a scope, voids
 * of such, and those by which a device's gaps changed; in the order of arrival. Cost: what arrived in between.
 */
export async function findLate(
  record: MomentRecord,
  scope: Scope,
  { to, numbers }: { to: number; numbers: readonly LateNumber[] },
): Promise<LateEvent[]> {
  const { knownTo, untilUs } = record.moment;
  const receivedWith = new Map(numbers.map(({ event, received }) => [event.id, received]));
  const { rows } = await record.live.query(
    `with slot as (select * from unnest($6::text[], $7::text[]) as s(station, slot))
     select ${EVENT_COLUMNS}, e.position, e.recorded_at, e.recorded_by, named.unit as named_unit
     from log.event e
     left join log.event named on e.type = 'event.voided' and named.id = (e.body ->> 'event')::uuid
     cross join lateral (
       select case when e.type = 'event.voided' then named.type else e.type end as type,
              case when e.type = 'event.voided' then named.unit else e.unit end as unit,
              case when e.type = 'event.voided' then named.station else e.station end as station,
              case when e.type = 'event.voided' then named.body else e.body end as body
     ) a
     where e.position > $1 and e.position <= $2 and (e.type = 'event.voided' or e.at <= $3::timestamptz) and (
         (a.unit = any($4) and a.type = any($10)
           and (a.type <> 'unit.processed' or $5::text[] is null or a.station = any($5) or a.body ? 'used'))
         or (a.type = any($11) and (a.station, a.body ->> 'slot') in (select station, slot from slot))
         or ((a.type = 'item.received' or ($9 and a.type = any($12))) and a.body ->> 'item' = any($8))
       )
       or e.id = any($13::uuid[])
     order by e.position`,
    [
      knownTo,
      to,
      momentText(untilUs),
      scope.units,
      scope.stations,
      scope.slots.map(({ station }) => station),
      scope.slots.map(({ slot }) => slot),
      scope.items,
      scope.weighs,
      OF_UNITS,
      OF_SLOTS,
      OF_COUNTS,
      numbers.flatMap(({ event, position }) => (position === null ? [] : [event.id])),
    ],
  );
  const recorded = rows.map((row): LateEvent => {
    const { position, recorded_at, recorded_by, named_unit } = rowSchema.parse(row);
    const event = readEventRow(row);
    return {
      event,
      position,
      recordedAtUs: recorded_at,
      recordedBy: recorded_by,
      unit: named_unit ?? subjectUnit(event),
      received: receivedWith.get(event.id) ?? null,
    };
  });
  // A refused event changes nothing but what its device owes.
  const refused = numbers.flatMap(({ position, ...late }): LateEvent[] =>
    position === null ? [{ ...late, position, unit: null }] : [],
  );
  return [...recorded, ...refused].sort(
    (a, b) => a.recordedAtUs - b.recordedAtUs || (a.position ?? 0) - (b.position ?? 0),
  );
}

/**
 * Units whose standing may depend on another unit's events, those of late events included: one is in the other, or
 * gave it a part, or they use up the grey zone of a splice at one station.
 */
export async function findRelatedUnits(
  { live }: MomentRecord,
  late: readonly LateEvent[],
): Promise<ReadonlySet<string>> {
  const { rows } = await live.query(
    `with moved as materialized (
       select type, unit, station, body from log.event where position = any($1::bigint[])
       union all
       select type, unit, station, body from pg_temp.undone
     ),
     spliced as materialized (
       select station from pg_temp.mount where is_spliced
       union
       select station from moved where type = 'item.spliced'
     )
     select unit from (
       select unnest(array[inner_unit, outer_unit]) as unit from pg_temp.joining
       union
       select unnest(array[inner_unit, outer_unit]) from pg_temp.separation
       union
       select unnest(array[unit, from_unit]) from pg_temp.salvage
       union
       select unnest(array[unit, coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit')]) from moved
       where type in ('unit.joined', 'unit.separated') or (type = 'part.installed' and body ? 'fromUnit')
       union
       select unit from pg_temp.pass where station in (select station from spliced)
       union
       select unit from moved where type = 'unit.processed' and station in (select station from spliced)
     ) related
     where unit is not null`,
    [late.flatMap(({ position }) => (position === null ? [] : [position]))],
  );
  return new Set(rows.map((row) => unitSchema.parse(row).unit));
}
