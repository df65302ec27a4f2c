import { z } from 'zod';
import { findEventsById } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { assembleKnown } from '@/lib/data/record/assemble-known';
import type { RecordCache } from '@/lib/data/record/record-cache';
import { refreshHold } from '@/lib/data/record/refresh-hold';
import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import { touchedBy } from '@/lib/domain/events/touched';
import { judge } from '@/lib/domain/gate/judge';
import type { Refusal } from '@/lib/domain/gate/refusals';
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
  const found = new Map<string, Refusal[]>();
  judging.cache.histories.clear();
  await judging.cache.histories.require(events.flatMap((event) => subjectUnit(event) ?? []));
  for (const event of events) {
    const flags = voided.has(event.id) ? [] : await flagsOf(judging, event);
    found.set(event.id, flags);
    if (canonical(flags) !== canonical(before.get(event.id) ?? [])) await keepFlags(judging, event, flags);
  }
  return found;
}

/** PostgreSQL gives the keys of an object back in an order of its own. */
function canonical(flags: readonly object[]): string {
  return JSON.stringify(flags.map((flag) => Object.entries(flag).sort(([a], [b]) => (a < b ? -1 : 1))));
}

async function flagsOf({ db, cache, plant }: Judging, event: LoggedEvent): Promise<Refusal[]> {
  return judge(event, await assembleKnown({ db, cache, plant, event, mode: 'record' }));
}

async function keepFlags({ db, cache }: Judging, event: LoggedEvent, flags: Refusal[]): Promise<void> {
  await db.query('insert into log.judgement (event, flags) values ($1, $2::jsonb)', [
    event.id,
    JSON.stringify(flags),
  ]);
  await showFlags(db, event, flags);
  cache.holds.clear();
}

/** Sets the flags that an event bears now, with the hold on its unit. */
export async function showFlags(db: Queryable, event: LoggedEvent, flags: unknown[]): Promise<void> {
  await db.query('delete from read.flagged where event = $1', [event.id]);
  if (flags.length > 0)
    await db.query(
      'insert into read.flagged (event, unit, station, at, flags) values ($1, $2, $3, $4, $5::jsonb)',
      [event.id, subjectUnit(event), event.station ?? null, formatInstant(event.atUs), JSON.stringify(flags)],
    );
  if (event.type !== 'hold.placed') await refreshHold(db, event.id);
}

const eventIdRow = z.object({ event: z.string() });

async function voidedAmong(db: Queryable, events: readonly LoggedEvent[]): Promise<Set<string>> {
  const { rows } = await db.query('select event from read.voided where event = any($1::uuid[])', [
    events.map((event) => event.id),
  ]);
  return new Set(rows.map((row) => eventIdRow.parse(row).event));
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
