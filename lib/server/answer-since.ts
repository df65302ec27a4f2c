import { findEventsById } from '@/lib/data/log/find-events';
import { admitStandings } from '@/lib/data/moment/admit-where-used';
import type { LateEvent } from '@/lib/data/moment/moment-record';
import { findKnownTo, onMoment } from '@/lib/data/moment/on-moment';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findStandings } from '@/lib/data/trace/find-standings';
import {
  type CausingEvent,
  type Change,
  changesBetween,
  countKinds,
  type Difference,
  sizeOf,
} from '@/lib/domain/genealogy/difference';
import { type DifferenceQuestion, whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { database } from '@/lib/server/database';
import { findCauses } from '@/lib/server/find-causes';

/** Most units whose record is made again for one comparison: beyond it, memory and minutes would be spent on it. */
const UNITS_MAX = 30_000;

/** A difference, or how many units would have to be looked at when they are too many. */
export type Compared =
  | { ok: true; difference: Difference }
  | { ok: false; refusal: { code: 'too_many_units'; units: number; max: number } };

/**
 * What happened to a where-used answer since it was given: which units joined it, left it or stand in it otherwise, and
 * which event did it. The answer is made again as it was known then, and what arrived since is added to it.
 */
export async function answerSince({ since, until, limit, ...asked }: DifferenceQuestion): Promise<Compared> {
  const { pool } = database();
  const atUs = asked.at === undefined ? Number.POSITIVE_INFINITY : instantOf(asked.at);
  const untilUs = until === undefined ? Number.POSITIVE_INFINITY : instantOf(until);
  const sinceUs = instantOf(since);
  const question = whereUsedQuestionSchema.parse({ ...asked, knownAt: since });
  const asOf = formatInstant(Date.now() * 1000);
  const later = await onMoment(pool, { knownAtUs: untilUs, atUs }, async (record) => {
    const start = await findKnownTo(record.live, sinceUs);
    const units = await admitStandings(record, question, { since: start, unitsMax: UNITS_MAX });
    return { to: record.moment.knownTo, positions: await record.positions(), units };
  });
  if (later.units > UNITS_MAX)
    return { ok: false, refusal: { code: 'too_many_units', units: later.units, max: UNITS_MAX } };
  return onMoment(pool, { knownAtUs: sinceUs, atUs }, async (record) => {
    // What was there then and bears on the later answer too is among the later positions.
    await admitStandings(record, question, { since: null, unitsMax: UNITS_MAX });
    await record.admit('select unnest($1::bigint[])', [later.positions]);
    const answer = () => findStandings(record.db, question);
    const before = await answer();
    const late = await record.findLate(later.positions, later.to);
    const { after, causes } = await findCauses(record, { before, late, answer });
    const changes = changesBetween(before, after);
    const listed = changes.slice(0, limit).map((change): Change => {
      const by = causes.get(change.unit);
      if (by === undefined) throw new Error('What changed was changed by an event.');
      return { ...change, by };
    });
    const difference = {
      since,
      until: until ?? asOf,
      ...(await findCompleteness(record.live)),
      before: sizeOf(before),
      after: sizeOf(after),
      counts: countKinds(changes),
      leavesOut: (await loadPlant(record.live)).plant.weighsOrOwes,
      late: late.length,
      changes: listed,
      events: await causingEvents(record.live, late, listed),
    };
    return { ok: true, difference };
  });
}

/** The events that did the changes, in the order of their arrival, with what they void. */
async function causingEvents(
  live: Queryable,
  late: readonly LateEvent[],
  changes: readonly Change[],
): Promise<CausingEvent[]> {
  const causing = new Set(changes.flatMap(({ by }) => ('event' in by ? [by.event] : [])));
  const found = late.filter(({ event }) => causing.has(event.id));
  const named = found.flatMap(({ event }) => (event.type === 'event.voided' ? [event.body.event] : []));
  const voided = new Map((await findEventsById(live, named)).map((event) => [event.id, event]));
  return found.map(({ event: { atUs: _, ...event }, recordedAtUs, recordedBy }) => {
    const target = event.type === 'event.voided' ? voided.get(event.body.event) : undefined;
    if (target === undefined)
      return { event, recordedAt: formatInstant(recordedAtUs), recordedBy, voids: null };
    const { atUs: __, ...voids } = target;
    return { event, recordedAt: formatInstant(recordedAtUs), recordedBy, voids };
  });
}
