import { z } from 'zod';
import { admitUnits, withOuterUnits } from '@/lib/data/moment/admit-where-used';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { refreshHolds } from '@/lib/data/record/refresh-holds';

/** Deepest chain of donors that is followed. */
const DEPTH_MAX = 64;
const donorSchema = z.object({ donor: z.string() });
const eventSchema = z.object({ event: z.string() });

/** Admits to the record of a moment every event that can bear on a unit's as-built record. */
export async function admitAsBuilt(record: MomentRecord, unit: string): Promise<void> {
  const family = await withDonors(record, unit);
  await record.admit(
    `select position from log.event
     where type in ('unit.joined', 'unit.separated', 'part.installed')
       and (coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit')) collate "C" = $1
     union
     select position from log.event
     where type = 'hold.placed' and (body -> 'target' ->> 'kind') collate "C" = 'unit'
       and (body -> 'target' ->> 'id') collate "C" = $1`,
    [unit],
  );
  await admitUnits(record, [...new Set([...family, ...(await withOuterUnits(record, [unit]))])]);
  await admitSlots(record, family);
  await admitItems(record);
  await admitHolds(record);
}

async function withDonors(record: MomentRecord, unit: string): Promise<string[]> {
  const family = new Set([unit]);
  let level = [unit];
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    const { rows } = await record.live.query(
      `select distinct body ->> 'fromUnit' as donor from log.event
       where type = 'part.installed' and unit = any($1) and body ->> 'fromUnit' is not null`,
      [level],
    );
    level = rows.map((row) => donorSchema.parse(row).donor).filter((donor) => !family.has(donor));
    for (const donor of level) family.add(donor);
  }
  return [...family];
}

/**
 * What was in the slots while the units were there: from the last mount before the first pass, which ends whatever
 * splices came before it, to the last pass. Where something was spliced, the units that came by use up the grey zone.
 */
async function admitSlots(record: MomentRecord, units: readonly string[]): Promise<void> {
  const visits = `
    select p.station, min(p.low) as low, max(p.high) as high
    from pg_temp.pass p where p.unit = any($1) group by p.station`;
  await record.admit(
    `select e.position
     from (${visits}) visit
     join read.slot_doubt s on s.station = visit.station
     left join lateral (
       select x.at from log.event x
       where x.type = 'item.mounted' and x.station = s.station
         and (x.body ->> 'slot') collate "C" = s.slot and x.at <= visit.low - s.doubt and x.position <= $2
         and not exists (
           select from log.event v
           where v.type = 'event.voided' and v.body ->> 'event' = x.id::text and v.position <= $2
         )
       order by x.at desc, x.id desc limit 1
     ) before on true
     join log.event e on e.type in ('item.mounted', 'item.unmounted', 'item.spliced')
       and e.station = s.station and (e.body ->> 'slot') collate "C" = s.slot
       and e.at >= coalesce(before.at, '-infinity') and e.at <= visit.high + s.doubt`,
    [units, record.moment.knownTo],
  );
  const passing = `
    from (${visits}) visit
    join pg_temp.mount m on m.station = visit.station and m.is_spliced
    join log.event e on e.type = 'unit.processed' and e.station = m.station
      and e.at >= m.from_at and e.at <= visit.high`;
  await record.admit(`select e.position ${passing}`, [units]);
  await record.admit(
    `select s.position from log.event s
     where s.type = 'unit.started' and s.unit in (select e.unit ${passing})`,
    [units],
  );
}

function admitItems(record: MomentRecord): Promise<void> {
  return record.admit(
    `select position from log.event
     where type like 'item.%' and type not in ('item.mounted', 'item.unmounted')
       and (body ->> 'item') collate "C" in (
         select item from pg_temp.mount
         union select item from pg_temp.splice
         union select item from pg_temp.direct_draw
       )`,
    [],
  );
}

/** Holds with their releases, and those that the server placed for what it flagged. */
async function admitHolds(record: MomentRecord): Promise<void> {
  await record.admit(
    `select position from log.event
     where type = 'hold.released'
       and body ->> 'hold' in (select id::text from pg_temp.moment_event where unit is not null or type = 'hold.placed')
     union
     select position from log.event
     where type = 'exception.cleared'
       and body ->> 'event' in (select id::text from pg_temp.moment_event where unit is not null)`,
    [],
  );
  const { rows } = await record.live.query(
    `insert into pg_temp.flagged select f.* from read.flagged f join pg_temp.moment_event e on e.id = f.event
     on conflict do nothing
     returning event`,
  );
  await refreshHolds(
    record.db,
    rows.map((row) => eventSchema.parse(row).event),
  );
}
