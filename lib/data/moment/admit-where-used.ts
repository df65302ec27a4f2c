import { z } from 'zod';
import { BEARING_TYPES, type MomentRecord } from '@/lib/data/moment/moment-record';
import { BREADTH_MAX } from '@/lib/domain/genealogy/breadth';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

/** Deepest chain of units or containers that is followed. */
const DEPTH_MAX = 64;
const codeSchema = z.object({ code: z.string() });

/**
 * Admits to the record of a moment every event that can bear on a where-used answer: what was in the slots that the
 * items were ever in, the units that passed there, those around them, and where these are. Too many do no harm: the
 * answer is the question's own statement over them.
 */
export async function admitWhereUsed(record: MomentRecord, question: WhereUsedQuestion): Promise<void> {
  const units = await unitsOf(record, question, record.moment.knownTo);
  await admitUnits(record, await withOuterUnits(record, units));
}

/**
 * Admits what can bear on who is in a where-used answer and how, not on where the units are. With `since`, a position of
 * the log, also what can only have done so at a moment between that one and the record's: what was voided or cut short
 * meanwhile. Returns the number of units; when there are more than `unitsMax`, nothing of them is admitted.
 */
export async function admitStandings(
  record: MomentRecord,
  question: WhereUsedQuestion,
  { since, unitsMax }: { since: number | null; unitsMax: number },
): Promise<number> {
  const units = await unitsOf(record, question, since ?? record.moment.knownTo);
  const between = since === null || !isAboutThings(question) ? [] : await greyUnits(record, since);
  const around = await withOuterUnits(record, [...units, ...between]);
  const family = since === null ? around : await withInnerUnits(record, around);
  if (family.length > unitsMax) return family.length;
  // Who used a thing is decided where it was, and by what an event names itself.
  const stations = isAboutThings(question)
    ? await codes(
        record,
        'select distinct station as code from pg_temp.moment_event where station is not null',
        [],
      )
    : null;
  await record.admit(
    `select position from log.event
     where unit = any($1) and type = any($3)
       and (type <> 'unit.processed' or $2::text[] is null or station = any($2) or body ? 'used')`,
    [family, stations, BEARING_TYPES],
  );
  return family.length;
}

function unitsOf(record: MomentRecord, question: WhereUsedQuestion, voidsAfter: number): Promise<string[]> {
  return isAboutThings(question) ? drawingUnits(record, question, voidsAfter) : workedUnits(record, question);
}

function isAboutThings({ item, lot, part }: WhereUsedQuestion): boolean {
  return item !== undefined || lot !== undefined || part !== undefined;
}

async function codes(record: MomentRecord, text: string, values: unknown[]): Promise<string[]> {
  const { rows } = await record.live.query(text, values);
  return rows.map((row) => codeSchema.parse(row).code);
}

/** Items that the question wants by any knowledge of them: an item's lot or part may have been corrected since. */
async function wantedItems(record: MomentRecord, question: WhereUsedQuestion): Promise<string[]> {
  const { item, lot, part } = question;
  if (item !== undefined) return [item];
  return codes(
    record,
    `select distinct body ->> 'item' as code from log.event
     where type = 'item.received'
       and ($1::text is null or body ->> 'lot' = $1) and ($2::text is null or body ->> 'part' = $2)`,
    [lot ?? null, part ?? null],
  );
}

/** Units that can have drawn the items, and those with an event that was voided after a position of the log. */
async function drawingUnits(
  record: MomentRecord,
  question: WhereUsedQuestion,
  voidsAfter: number,
): Promise<string[]> {
  const items = await wantedItems(record, question);
  const named = question.lot === undefined ? items : [...items, question.lot];
  await record.admit(
    `select e.position
     from (
       select station, body ->> 'slot' as slot from log.event
       where type = 'item.mounted' and (body ->> 'item') collate "C" = any($1)
       union
       select station, body ->> 'slot' from log.event
       where type = 'item.spliced' and (body ->> 'from' = any($1) or body ->> 'to' = any($1))
     ) place
     join log.event e on e.type in ('item.mounted', 'item.unmounted', 'item.spliced')
       and e.station = place.station and (e.body ->> 'slot') collate "C" = place.slot
     union
     select position from log.event
     where type like 'item.%' and type not in ('item.mounted', 'item.unmounted')
       and (body ->> 'item') collate "C" = any($2)`,
    [items, named],
  );
  await record.admit(
    `select position from log.event
     where type like 'item.%' and type not in ('item.mounted', 'item.unmounted')
       and (body ->> 'item') collate "C" in (
         select body ->> 'to' from pg_temp.moment_event where type = 'item.spliced'
       )`,
    [],
  );
  // What is spliced needs all units that came by: they use up the grey zone. A void that came later takes nothing away.
  return codes(
    record,
    `select p.unit as code
     from pg_temp.mount m
     cross join generate_series(0, ${BREADTH_MAX}) as k(breadth)
     join read.pass p on p.station = m.station and p.breadth = k.breadth
       and p.high >= m.from_low and p.high < m.to_high + read.breadth_span(k.breadth) and p.low < m.to_high
     join log.event e on e.id = p.event and e.position <= $3
     where m.item = any($1) or m.is_spliced
     union
     select unit from read.direct_draw where item = any($2)
     union
     select named.unit from log.event v
     join log.event named on named.id = (v.body ->> 'event')::uuid
     where v.type = 'event.voided' and v.position > $4 and named.unit is not null`,
    [items, named, record.moment.knownTo, voidsAfter],
  );
}

/**
 * Units that can have used up the grey zone of a splice at any moment since a position of the log: until a change of the
 * slot that was known then and still counts, whatever ended the zone in between.
 */
function greyUnits(record: MomentRecord, since: number): Promise<string[]> {
  return codes(
    record,
    `select distinct p.unit as code
     from (
       select station, (body ->> 'slot') collate "C" as slot, at, make_interval(secs => uncertainty_ms / 1000.0) as doubt
       from pg_temp.moment_event where type = 'item.spliced'
     ) s
     left join lateral (
       select e.at + make_interval(secs => e.uncertainty_ms / 1000.0) as at
       from log.event e
       where e.type in ('item.mounted', 'item.spliced') and e.station = s.station
         and (e.body ->> 'slot') collate "C" = s.slot and e.at > s.at and e.position <= $1
         and not exists (
           select from log.event v where v.type = 'event.voided' and v.body ->> 'event' = e.id::text and v.position <= $2
         )
       order by e.at, e.id limit 1
     ) change on true
     join log.event p on p.type = 'unit.processed' and p.station = s.station and p.position <= $2
       and p.at >= s.at - s.doubt - make_interval(secs => p.uncertainty_ms / 1000.0)
       and coalesce((p.body ->> 'startedAt')::timestamptz, p.at) - make_interval(secs => p.uncertainty_ms / 1000.0)
         < coalesce(change.at, 'infinity')`,
    [since, record.moment.knownTo],
  );
}

function workedUnits(record: MomentRecord, question: WhereUsedQuestion): Promise<string[]> {
  const { station, operator, from, to } = question;
  return codes(
    record,
    `select distinct e.unit as code from log.event e
     where e.type = 'unit.processed' and e.position <= $5
       and ($1::text is null or e.station = $1) and ($2::text is null or e.operator = $2)
       and ($3::timestamptz is null or e.at + make_interval(secs => e.uncertainty_ms / 1000.0) >= $3)
       and ($4::timestamptz is null or e.at - make_interval(secs => e.uncertainty_ms / 1000.0) <= $4)`,
    [station ?? null, operator ?? null, from ?? null, to ?? null, record.moment.knownTo],
  );
}

/** The units with those that they went into, as sub-assemblies or by salvage, at any depth. */
export async function withOuterUnits(record: MomentRecord, units: readonly string[]): Promise<string[]> {
  const family = new Set(units);
  let level = [...family];
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    const around = await codes(
      record,
      `select body ->> 'into' as code from log.event where type = 'unit.joined' and unit = any($1)
       union
       select unit from log.event
       where type = 'part.installed'
         and (coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit')) collate "C" = any($1)`,
      [level],
    );
    level = around.filter((unit) => !family.has(unit));
    for (const unit of level) family.add(unit);
  }
  return [...family];
}

/** The units with those that were ever inside them or gave them a part, at any depth. */
async function withInnerUnits(record: MomentRecord, units: readonly string[]): Promise<string[]> {
  const family = new Set(units);
  let level = [...family];
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    const inside = await codes(
      record,
      `select unit as code from log.event
       where type = 'unit.joined'
         and (coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit')) collate "C" = any($1)
       union
       select body ->> 'fromUnit' from log.event
       where type = 'part.installed' and unit = any($1) and body ->> 'fromUnit' is not null`,
      [level],
    );
    level = inside.filter((unit) => !family.has(unit));
    for (const unit of level) family.add(unit);
  }
  return [...family];
}

/** Admits what happened to units, and to the containers that they are in. */
export async function admitUnits(record: MomentRecord, units: readonly string[]): Promise<void> {
  await record.admit('select position from log.event where unit = any($1)', [units]);
  const seen = new Set<string>();
  let level = await codes(
    record,
    `select distinct body ->> 'container' as code from pg_temp.moment_event
     where type in ('unit.packed', 'unit.unpacked')`,
    [],
  );
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    for (const container of level) seen.add(container);
    await record.admit(
      `select position from log.event
       where type like 'container.%' and (body ->> 'container') collate "C" = any($1)`,
      [level],
    );
    const around = await codes(
      record,
      `select distinct body ->> 'into' as code from pg_temp.moment_event
       where type = 'container.nested' and body ->> 'container' = any($1)`,
      [level],
    );
    level = around.filter((container) => !seen.has(container));
  }
}
