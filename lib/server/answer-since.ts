import { findDoubtWindows } from '@/lib/data/balance/find-doubt-windows';
import { findEventsById } from '@/lib/data/log/find-events';
import { admitDifference } from '@/lib/data/moment/admit-difference';
import { findLate, findRelatedUnits } from '@/lib/data/moment/find-late';
import type { LateEvent } from '@/lib/data/moment/late-event';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { findKnownTo, onMoment } from '@/lib/data/moment/on-moment';
import type { Queryable } from '@/lib/data/pool';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findStandings } from '@/lib/data/trace/find-standings';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import {
  type CausingEvent,
  type Change,
  changesBetween,
  countKinds,
  type Difference,
  sizeOf,
} from '@/lib/domain/genealogy/difference';
import {
  type DifferenceQuestion,
  type WhereUsedQuestion,
  whereUsedQuestionSchema,
} from '@/lib/domain/genealogy/question';
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
  const atUs = asked.at === undefined ? Number.POSITIVE_INFINITY : instantOf(asked.at);
  const untilUs = until === undefined ? Number.POSITIVE_INFINITY : instantOf(until);
  const question = whereUsedQuestionSchema.parse({ ...asked, knownAt: since });
  const asOf = formatInstant(Date.now() * 1000);
  return onMoment(database().pool, { knownAtUs: instantOf(since), atUs }, async (record) => {
    const end = { to: await findKnownTo(record.live, untilUs), toUs: untilUs };
    const between = await admitDifference(record, question, { until: end, unitsMax: UNITS_MAX });
    if ('units' in between)
      return { ok: false, refusal: { code: 'too_many_units', units: between.units, max: UNITS_MAX } };
    const { scope, numbers, isWeighed } = between;
    const choice = { withCounts: isWeighed };
    const answer = () => findStandings(record.db, question, choice);
    const before = await answer();
    const late = await findLate(record, scope, { to: end.to, numbers });
    const isEntangled = async () => scope.weighs && (await countsDecide(record, { question, late }));
    const { after, causes } = await findCauses(
      {
        attempt: (work) => record.attempt(work),
        play: (events) => record.play(events),
        relatedUnits: async () =>
          (await isEntangled()) ? new Set(scope.units) : findRelatedUnits(record, late),
      },
      { before, late, answer },
    );
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
      leavesOut: !isWeighed,
      late: late.length,
      changes: listed,
      events: await causingEvents(record.live, late, listed),
    };
    return { ok: true, difference };
  });
}

/** Late events so few that each may come alone, whatever it takes. */
const FEW = 80;

/**
 * Whether the counts decide who changed: then every late event may change the standing of any unit. Many events are
 * told apart all the same while the counts agree before and after them: each changes its own unit.
 */
async function countsDecide(
  record: MomentRecord,
  { question, late }: { question: WhereUsedQuestion; late: readonly LateEvent[] },
): Promise<boolean> {
  if (late.length <= FEW) return true;
  const isDoubted = async () =>
    (await findDoubtWindows(record.db, question)).some(({ reason }) => reason === 'balance');
  if (await isDoubted()) return true;
  let isDoubtedAfter = false;
  await record.attempt(async () => {
    await record.play(late);
    isDoubtedAfter = await isDoubted();
    return false;
  });
  return isDoubtedAfter;
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
  return found.map(({ event: { atUs: _, ...event }, recordedAtUs, recordedBy, position, received }) => {
    const target = event.type === 'event.voided' ? voided.get(event.body.event) : undefined;
    return {
      event,
      recordedAt: formatInstant(recordedAtUs),
      recordedBy,
      voids: target === undefined ? null : sentOf(target),
      isRefused: position === null,
      changesOwing: received !== null,
    };
  });
}

function sentOf({ atUs: _, ...event }: LoggedEvent): WireEvent {
  return event;
}
