import { findOwing } from '@/lib/data/trace/find-owing';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import { onSnapshot } from '@/lib/data/transaction';
import type { WhereUsedAnswer } from '@/lib/domain/genealogy/answer';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/** Which units used the wanted items, and where they are now, with what the answer cannot know. */
export function whereUsed(question: WhereUsedQuestion): Promise<WhereUsedAnswer> {
  return onSnapshot(database().pool, async (client) => {
    const asOf = formatInstant(Date.now() * 1000);
    const owing = await findOwing(client);
    return { asOf, complete: owing.length === 0, owing, ...(await findWhereUsed(client, question)) };
  });
}
