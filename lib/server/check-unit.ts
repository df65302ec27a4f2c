import { assembleKnown } from '@/lib/data/record/assemble-known';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { judge } from '@/lib/domain/gate/judge';
import type { CheckAnswer, CheckQuestion } from '@/lib/domain/gate/question';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { nextStep } from '@/lib/domain/units/progress';
import { type RecordRead, readingRecord } from '@/lib/server/reading-record';

// Ties go to the later id: at its very moment, a question comes after everything that happened.
const LAST_ID = 'ffffffff-ffff-ffff-ffff-ffffffffffff';

/** Asks the gate whether a unit may be worked on at a station; changes nothing. */
export function checkUnit(question: CheckQuestion): Promise<CheckAnswer> {
  return readingRecord((record) => judgeUnit(record, question));
}

/** What the gate says of a pass of a unit at a station. */
export async function judgeUnit(
  record: RecordRead,
  { unit, station, operator, at }: CheckQuestion,
): Promise<CheckAnswer> {
  const { plant } = record;
  const atUs = at === undefined ? Date.now() * 1000 : instantOf(at);
  const event: LoggedEvent = {
    id: LAST_ID,
    type: 'unit.processed',
    at: at ?? formatInstant(atUs),
    atUs,
    station,
    ...(operator === undefined ? {} : { operator }),
    body: { unit, result: 'pass' },
  };
  const known = await assembleKnown({ ...record, event, mode: 'enforce' });
  const reasons = judge(event, known);
  const state = known.unit(unit);
  const next = state === null ? null : nextStep(unit, state, plant);
  return {
    go: reasons.length === 0,
    reasons,
    next: next === null ? null : { operation: next.operation, step: next.step },
  };
}
