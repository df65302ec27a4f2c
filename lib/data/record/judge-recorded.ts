import { z } from 'zod';
import { findEventsById } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { assembleKnown } from '@/lib/data/record/assemble-known';
import { holdKey, type RecordCache } from '@/lib/data/record/record-cache';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import { touchedBy } from '@/lib/domain/events/touched';
import { judge } from '@/lib/domain/gate/judge';
import { refusalSchema } from '@/lib/domain/gate/question';
import { inPrecedence, type Refusal } from '@/lib/domain/gate/refusals';
import type { Plant } from '@/lib/domain/plant/plant';
import { formatInstant } from '@/lib/domain/time';

type Judging = { db: Queryable; cache: RecordCache; plant: Plant };

const flaggedRow = z.object({ event: z.string(), flags: z.array(z.looseObject({ code: z.string() })) });

/**
 * Judges events recorded under `gate: record`: those given, and those flagged before that the given changes may have
 * put right. What is wrong is kept as a judgement in the log, and holds the unit as long as it is wrong. Returns the
 * flags of the given events by id.
 */
export async function judgeRecorded(
  judging: Judging,
  recorded: readonly LoggedEvent[],
  changes: readonly LoggedEvent[],
): Promise<Map<string, Refusal[]>> {
  const { db } = judging;
  const affected = await flaggedIdsAfter(db, changes);
  const fresh = new Set(recorded.map((event) => event.id));
  const older = [...affected].filter((id) => !fresh.has(id));
  const events = [...recorded, ...(await findEventsById(db, older))];
  const voided = await voidedAmong(db, events);
  const before = await currentFlags(db, [...fresh, ...older]);
  const deliveries = await deliveryFlags(db, [...fresh, ...older]);
  const found = new Map<string, Refusal[]>();
  await readAhead(judging.cache, events);
  const changed: Flagged[] = [];
  for (const event of events) {
    const flags = voided.has(event.id)
      ? []
      : inPrecedence([...(deliveries.get(event.id) ?? []), ...(await flagsOf(judging, event))]);
    found.set(event.id, flags);
    if (canonical(flags) !== canonical(before.get(event.id) ?? [])) changed.push({ event, flags });
  }
  await keepFlags(judging, changed);
  return found;
}

/** Reads in bulk what the events will be judged on. */
async function readAhead(cache: RecordCache, events: readonly LoggedEvent[]): Promise<void> {
  const units = events.flatMap((event) => subjectUnit(event) ?? []);
  cache.histories.clear();
  cache.holds.clear();
  await Promise.all([
    cache.units.require(units),
    cache.histories.require(units),
    cache.joiningsOfInner.require(units),
    cache.holds.require(units.map((unit) => holdKey('unit', unit))),
    cache.slots.require(events.flatMap((event) => (event.type === 'unit.processed' ? [event.station] : []))),
    cache.containers.require(events.flatMap((event) => touchedBy(event).containers)),
  ]);
}

/** PostgreSQL gives the keys of an object back in an order of its own. */
function canonical(flags: readonly object[]): string {
  return JSON.stringify(flags.map((flag) => Object.entries(flag).sort(([a], [b]) => (a < b ? -1 : 1))));
}

async function flagsOf({ db, cache, plant }: Judging, event: LoggedEvent): Promise<Refusal[]> {
  return judge(event, await assembleKnown({ db, cache, plant, event, mode: 'record' }));
}

async function keepFlags({ db, cache }: Judging, changed: readonly Flagged[]): Promise<void> {
  if (changed.length === 0) return;
  await db.query(
    `insert into log.judgement (event, flags)
     select event, flags from jsonb_to_recordset($1::jsonb) as r(event uuid, flags jsonb)`,
    [JSON.stringify(changed.map(({ event, flags }) => ({ event: event.id, flags })))],
  );
  await showFlags(db, changed);
  cache.holds.clear();
}

/** An event with what is wrong with it now. */
type Flagged = { event: LoggedEvent; flags: unknown[] };

/** Sets the flags that events bear now, with the holds on their units. */
export async function showFlags(db: Queryable, flagged: readonly Flagged[]): Promise<void> {
  const ids = flagged.map(({ event }) => event.id);
  await db.query('delete from read.flagged where event = any($1::uuid[])', [ids]);
  const rows = flagged
    .filter(({ flags }) => flags.length > 0)
    .map(({ event, flags }) => ({
      event: event.id,
      unit: subjectUnit(event),
      station: event.station ?? null,
      at: formatInstant(event.atUs),
      flags,
    }));
  await db.query(
    `insert into read.flagged (event, unit, station, at, flags)
     select event, unit, station, at, flags
     from jsonb_to_recordset($1::jsonb) as r(event uuid, unit text, station text, at timestamptz, flags jsonb)`,
    [JSON.stringify(rows)],
  );
  await refreshHolds(db, ids);
}

const eventIdRow = z.object({ event: z.string() });

async function voidedAmong(db: Queryable, events: readonly LoggedEvent[]): Promise<Set<string>> {
  const { rows } = await db.query('select event from read.voided where event = any($1::uuid[])', [
    events.map((event) => event.id),
  ]);
  return new Set(rows.map((row) => eventIdRow.parse(row).event));
}

const deliveryRow = z.object({ id: z.string(), delivery: refusalSchema });

/** What speaks against the way in which events were brought; by id. */
async function deliveryFlags(db: Queryable, ids: string[]): Promise<Map<string, Refusal[]>> {
  const { rows } = await db.query(
    'select id, delivery from log.event where id = any($1::uuid[]) and delivery is not null',
    [ids],
  );
  return new Map(
    rows.map((row) => {
      const { id, delivery } = deliveryRow.parse(row);
      return [id, [delivery]];
    }),
  );
}

async function currentFlags(db: Queryable, ids: string[]): Promise<Map<string, object[]>> {
  const { rows } = await db.query('select event, flags from read.flagged where event = any($1::uuid[])', [
    ids,
  ]);
  return new Map(
    rows.map((row) => {
      const { event, flags } = flaggedRow.parse(row);
      return [event, flags];
    }),
  );
}

/**
 * Flagged events whose judgement may rest on one of the changes: of the same unit, at the same slot in its time, or with
 * a flag that names a unit, item, container or hold which the change is about.
 */
async function flaggedIdsAfter(db: Queryable, changes: readonly LoggedEvent[]): Promise<Set<string>> {
  const any = await db.query('select from read.flagged limit 1');
  if (any.rowCount === 0) return new Set();
  const units = new Set<string>();
  const facts = new Set<string>();
  for (const event of changes) {
    const { units: touched, items, containers, mentioned, holds, joining } = touchedBy(event);
    for (const unit of joining === null ? touched : [joining.inner, joining.outer]) {
      units.add(unit);
      facts.add(JSON.stringify({ unit }));
    }
    for (const item of items) facts.add(JSON.stringify({ item }));
    for (const container of [...containers, ...mentioned]) facts.add(JSON.stringify({ container }));
    for (const hold of holds) facts.add(JSON.stringify({ hold }));
  }
  const ids = new Set<string>();
  const take = async (where: string, values: unknown[]) => {
    const { rows } = await db.query(`select f.event from read.flagged f where ${where}`, values);
    for (const row of rows) ids.add(eventIdRow.parse(row).event);
  };
  if (units.size > 0) await take('f.unit = any($1)', [[...units]]);
  if (facts.size > 0)
    await take(
      'exists (select from unnest($1::jsonb[]) as x(fact) where f.flags @> jsonb_build_array(x.fact))',
      [[...facts]],
    );
  for (const { type, station, body, atUs, id } of changes) {
    if (type !== 'item.mounted' && type !== 'item.unmounted') continue;
    await take(
      `f.station = $1 and f.at >= $3::timestamptz and f.at <= coalesce((
         select m.from_at from read.mount m
         where m.station = $1 and m.slot = $2 and (m.from_at, m.event) > ($3::timestamptz, $4::uuid)
         order by m.from_at, m.event limit 1), 'infinity')`,
      [station, body.slot, formatInstant(atUs), id],
    );
  }
  return ids;
}
