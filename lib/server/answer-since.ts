import { admitWhereUsed } from '@/lib/data/moment/admit-where-used';
import type { LateEvent, MomentRecord } from '@/lib/data/moment/moment-record';
import { onMoment } from '@/lib/data/moment/on-moment';
import type { Queryable } from '@/lib/data/pool';
import { findOwing } from '@/lib/data/trace/find-owing';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import type { UsedUnit } from '@/lib/domain/genealogy/answer';
import { type Cause, changesBetween, type Difference } from '@/lib/domain/genealogy/difference';
import { PAGE_MAX, type WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/** Most answers that are worked out on the way from one to the other; what comes after is told without its cause. */
const STEPS_MAX = 300;
const NOW = { knownAtUs: Number.POSITIVE_INFINITY, atUs: Number.POSITIVE_INFINITY };

type Answer = Map<string, UsedUnit>;

/**
 * What happened to a where-used answer since it was given: which units joined it, left it or stand in it otherwise, and
 * which event did it. The answer is made again as it was known then; what arrived since is added in the order of its
 * arrival, and the answer asked again wherever it can have changed.
 */
export async function answerSince(question: WhereUsedQuestion, since: string): Promise<Difference> {
  const { pool } = database();
  const asked = { ...question, at: undefined, knownAt: undefined };
  const asOf = formatInstant(Date.now() * 1000);
  const { now, positions } = await onMoment(pool, NOW, async (record) => {
    await admitWhereUsed(record, asked);
    return { now: record.moment.knownTo, positions: await record.positions() };
  });
  return onMoment(pool, { ...NOW, knownAtUs: instantOf(since) }, async (record) => {
    await admitWhereUsed(record, asked);
    await record.admit('select unnest($1::bigint[])', [positions]);
    const before = await answer(record.db, asked);
    const late = await record.findLate(positions, now);
    const { after, causes } = await replayed(record, { asked, before, late });
    const owing = await findOwing(record.live);
    return {
      since,
      asOf,
      complete: owing.length === 0,
      owing,
      before: before.counts,
      after: after.counts,
      changes: changesBetween(before.units, after.units).map((change) => ({
        ...change,
        by: causes.get(change.unit) ?? null,
      })),
    };
  });
}

async function answer(db: Queryable, question: WhereUsedQuestion) {
  const units: Answer = new Map();
  let cursor: string | null | undefined;
  let counts = null;
  while (cursor !== null) {
    const page = await findWhereUsed(db, { ...question, limit: PAGE_MAX, cursor });
    for (const unit of page.units) units.set(unit.unit, unit);
    counts ??= page.counts;
    cursor = page.next;
  }
  if (counts === null) throw new Error('An answer has at least one page.');
  return { units, counts };
}

async function replayed(
  record: MomentRecord,
  {
    asked,
    before,
    late,
  }: { asked: WhereUsedQuestion; before: Awaited<ReturnType<typeof answer>>; late: LateEvent[] },
) {
  const causes = new Map<string, Cause>();
  let last = before;
  const related = await record.relatedUnits(late);
  const steps = stepsOf(late, (unit) => related !== 'all' && !related.has(unit));
  for (const [index, step] of steps.entries()) {
    const isTold = index < STEPS_MAX;
    await record.play(step);
    if (!isTold && index < steps.length - 1) continue;
    const next = await answer(record.db, asked);
    for (const { unit } of changesBetween(last.units, next.units))
      causes.set(unit, isTold ? causeOf(unit, step) : null);
    last = next;
  }
  return { after: last, causes };
}

/**
 * Late events in the order of their arrival; together only the work on units that have nothing to do with each other,
 * where no splice makes the one's work count for the other.
 */
function stepsOf(late: readonly LateEvent[], isApart: (unit: string) => boolean): LateEvent[][] {
  const steps: LateEvent[][] = [];
  let units = new Set<string>();
  for (const each of late) {
    const { type, body } = each.event;
    const unit =
      (type === 'unit.processed' || type === 'unit.started') && isApart(body.unit) ? body.unit : null;
    const current = steps.at(-1);
    if (unit === null || current === undefined || units.size === 0 || units.has(unit)) {
      steps.push([each]);
      units = new Set(unit === null ? [] : [unit]);
    } else {
      current.push(each);
      units.add(unit);
    }
  }
  return steps;
}

function causeOf(unit: string, step: readonly LateEvent[]): Cause {
  const cause =
    step.length === 1 ? step[0] : step.find(({ event }) => 'unit' in event.body && event.body.unit === unit);
  if (cause === undefined) return null;
  const { event, recordedAtUs } = cause;
  return {
    id: event.id,
    type: event.type,
    at: event.at,
    operator: event.operator ?? null,
    recordedAt: formatInstant(recordedAtUs),
  };
}
