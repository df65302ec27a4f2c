import { z } from 'zod';
import { admitBalances, admitGaps } from '@/lib/data/moment/admit-doubt';
import { admitItems } from '@/lib/data/moment/admit-items';
import { admitPasses, findPassing, type StationTime } from '@/lib/data/moment/admit-passes';
import { admitIdentities, admitUnits } from '@/lib/data/moment/admit-units';
import { withDonors, withOuterUnits } from '@/lib/data/moment/find-family';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { refreshAllSlots } from '@/lib/data/record/refresh-slot';

const codeSchema = z.object({ code: z.string() });
const visitSchema = z.object({ station: z.string(), low: z.number(), high: z.number() });
const timeSchema = visitSchema;

/** Admits to the record of a moment all that bears on a unit's as-built record. */
export async function admitAsBuilt(record: MomentRecord, unit: string): Promise<void> {
  const family = await withDonors(record, [unit]);
  await admitUnits(record, [...new Set([...family, ...(await withOuterUnits(record, [unit]))])]);
  const visits = await findVisits(record, family);
  await admitVisitedSlots(record, visits);
  const slotted = await codes(
    record,
    'select item as code from pg_temp.mount union select item from pg_temp.splice',
    [],
  );
  await admitItems(record, [...slotted, ...(await findNamedItems(record, family))]);
  await admitBalances(record, slotted);
  await admitGaps(
    record,
    visits.map(({ station }) => station),
  );
  await admitHolds(record, unit);
}

async function codes({ live }: MomentRecord, text: string, values: unknown[]): Promise<string[]> {
  const { rows } = await live.query(text, values);
  return rows.map((row) => codeSchema.parse(row).code);
}

/** From when to when units were at stations, of all their passes at each. */
async function findVisits({ live }: MomentRecord, units: readonly string[]): Promise<StationTime[]> {
  const { rows } = await live.query(
    `select e.station, min(coalesce((e.body ->> 'startedAt')::timestamptz, e.at) - x.doubt) as low,
            max(e.at + x.doubt) as high
     from pg_temp.moment_event e
     cross join lateral (select make_interval(secs => e.uncertainty_ms / 1000.0) as doubt) x
     where e.unit = any($1) and e.type = 'unit.processed'
     group by e.station`,
    [units],
  );
  return rows.map((row) => {
    const { station, low: lowUs, high: highUs } = visitSchema.parse(row);
    return { station, lowUs, highUs };
  });
}

/**
 * What was in the slots while the units were there: from the last mount before the first pass, which ends whatever
 * splices came before it, to the last pass. Where something was spliced, the units that came by use up the grey zone.
 */
async function admitVisitedSlots(record: MomentRecord, visits: readonly StationTime[]): Promise<void> {
  const values = [
    visits.map(({ station }) => station),
    visits.map(({ lowUs }) => lowUs),
    visits.map(({ highUs }) => highUs),
  ];
  const inSlots = (table: string, at: string) => `
    from unnest($1::text[], $2::bigint[], $3::bigint[]) as visit(station, low_us, high_us)
    cross join lateral (
      select timestamptz 'epoch' + low_us * interval '1 microsecond' as low,
             timestamptz 'epoch' + high_us * interval '1 microsecond' as high
    ) v
    join read.slot_doubt s on s.station = visit.station collate "C"
    cross join lateral (
      select coalesce((
        select x.from_at from read.mount x join pg_temp.moment_event e on e.id = x.event
        where x.station = s.station and x.slot = s.slot and x.from_at <= v.low - s.doubt and not x.is_spliced
        order by x.from_at desc, x.event desc limit 1
      ), '-infinity') as at
    ) before
    join read.${table} m on m.station = s.station and m.slot = s.slot
      and m.${at} >= before.at and m.${at} <= v.high + s.doubt
    join pg_temp.moment_event e on e.id = m.event`;
  await record.live.query(
    `insert into pg_temp.mount select m.* ${inSlots('mount', 'from_at')} on conflict do nothing`,
    values,
  );
  await record.live.query(
    `insert into pg_temp.unmount select m.* ${inSlots('unmount', 'at')} on conflict do nothing`,
    values,
  );
  await record.live.query(
    `insert into pg_temp.splice
     select g.* from pg_temp.mount m join read.splice g on g.event = m.event where m.is_spliced
     on conflict do nothing`,
  );
  await refreshAllSlots(record.db);
  const { rows } = await record.live.query(
    `select m.station, min(m.from_low) as low, max(v.high_us) as high
     from pg_temp.mount m
     join unnest($1::text[], $2::bigint[], $3::bigint[]) as v(station, low_us, high_us)
       on m.station = v.station collate "C"
     where m.is_spliced
     group by m.station`,
    values,
  );
  const passing = rows.map((row) => {
    const { station, low, high } = timeSchema.parse(row);
    return { station, lowUs: low, highUs: high + 1 };
  });
  await admitPasses(record, passing);
  await admitIdentities(record, await findPassing(record, passing, { known: 'then' }));
}

/** Items that events of units name themselves. */
function findNamedItems(record: MomentRecord, units: readonly string[]): Promise<string[]> {
  return codes(
    record,
    `select body ->> 'item' as code from pg_temp.moment_event
     where unit = any($1) and type = 'part.installed' and body ? 'item'
     union
     select body ->> 'boardLot' from pg_temp.moment_event
     where unit = any($1) and type = 'unit.started' and body ? 'boardLot'
     union
     select used ->> 'item' from pg_temp.moment_event cross join jsonb_array_elements(body -> 'used') as used
     where unit = any($1) and type = 'unit.processed' and body ? 'used'`,
    [units],
  );
}

/** Holds on a unit: those that somebody placed, and those of what the server flagged or of used-up attempts. */
async function admitHolds(record: MomentRecord, unit: string): Promise<void> {
  await record.live.query(
    `insert into pg_temp.flagged
     select f.* from read.flagged f join pg_temp.moment_event e on e.id = f.event where f.unit = $1
     on conflict do nothing`,
    [unit],
  );
  await refreshHolds(
    record.db,
    await codes(
      record,
      `select event as code from pg_temp.flagged
       union
       select x.id::uuid from pg_temp.unit u cross join jsonb_array_elements_text(u.state -> 'exhausted') as x(id)
       where u.unit = $1
       union
       select id from pg_temp.moment_event
       where type = 'hold.placed' and (body -> 'target' ->> 'kind') collate "C" = 'unit'
         and (body -> 'target' ->> 'id') collate "C" = $1`,
      [unit],
    ),
  );
}
