import { admitWhereUsed } from '@/lib/data/moment/admit-where-used';
import { onMoment } from '@/lib/data/moment/on-moment';
import type { Queryable } from '@/lib/data/pool';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import { onSnapshot } from '@/lib/data/transaction';
import type { WhereUsedAnswer } from '@/lib/domain/genealogy/answer';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import { instantOf } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/** Most units whose record of a moment is made: beyond it, memory and minutes would be spent on it. */
export const UNITS_MAX = 30_000;

/** An answer about a moment would need the record of more units than that is made for. */
export class TooManyUnitsError extends Error {
  readonly max = UNITS_MAX;

  constructor() {
    super(`The record of more than ${UNITS_MAX} units would have to be made again.`);
  }
}

/** Which units used the wanted items, and where they are now, with what the answer cannot know. */
export function whereUsed(question: WhereUsedQuestion): Promise<WhereUsedAnswer> {
  return onRecordOf(question, async (db) => {
    const completeness = await findCompleteness(db, question.knownAt);
    return { ...completeness, ...(await findWhereUsed(db, question)) };
  });
}

/**
 * Runs work on the record that a question asks about: as it is, or as it stood about a moment (`at`) and as it was
 * known at one (`knownAt`). Throws a `TooManyUnitsError` where that is too much to make.
 */
export function onRecordOf<T>(question: WhereUsedQuestion, work: (db: Queryable) => Promise<T>): Promise<T> {
  const { at, knownAt } = question;
  if (!isAboutMoment(question)) return onSnapshot(database().pool, work);
  const usOf = (instant: string | undefined) =>
    instant === undefined ? Number.POSITIVE_INFINITY : instantOf(instant);
  return onMoment(database().pool, { knownAtUs: usOf(knownAt), atUs: usOf(at) }, async (record) => {
    const units = await admitWhereUsed(record, question, { unitsMax: UNITS_MAX });
    if (units > UNITS_MAX) throw new TooManyUnitsError();
    return work(record.db);
  });
}

/** Whether a question asks about the record as it stood or as it was known at another time than now. */
export function isAboutMoment({ at, knownAt }: WhereUsedQuestion): boolean {
  return at !== undefined || knownAt !== undefined;
}
