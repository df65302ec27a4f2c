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

/** Which units used the wanted items, and where they are now, with what the answer cannot know. */
export function whereUsed(question: WhereUsedQuestion): Promise<WhereUsedAnswer> {
  return onRecordOf(question, async (db, live) => {
    const completeness = await findCompleteness(live);
    return { ...completeness, ...(await findWhereUsed(db, question)) };
  });
}

/**
 * Runs work on the record that a question asks about: as it is, or as it stood about a moment (`at`) and as it was
 * known at one (`knownAt`). `live` is always the record as it is.
 */
export function onRecordOf<T>(
  question: WhereUsedQuestion,
  work: (db: Queryable, live: Queryable) => Promise<T>,
): Promise<T> {
  const { at, knownAt } = question;
  if (!isAboutMoment(question)) return onSnapshot(database().pool, (client) => work(client, client));
  const usOf = (instant: string | undefined) =>
    instant === undefined ? Number.POSITIVE_INFINITY : instantOf(instant);
  return onMoment(database().pool, { knownAtUs: usOf(knownAt), atUs: usOf(at) }, async (record) => {
    await admitWhereUsed(record, question);
    return work(record.db, record.live);
  });
}

/** Whether a question asks about the record as it stood or as it was known at another time than now. */
export function isAboutMoment({ at, knownAt }: WhereUsedQuestion): boolean {
  return at !== undefined || knownAt !== undefined;
}
