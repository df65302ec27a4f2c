import { loadPlant } from '@/lib/data/plant/load-plant';
import { findOwing } from '@/lib/data/trace/find-owing';
import { findNarrowed } from '@/lib/data/trace/narrow';
import { onSnapshotOnce } from '@/lib/data/transaction';
import type { NarrowAnswer } from '@/lib/domain/genealogy/narrow-answer';
import type { NarrowQuestion } from '@/lib/domain/genealogy/narrow-question';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/** Which units no condition rules out, what each condition does to the set, and what the answer cannot know. */
export function narrow(question: NarrowQuestion): Promise<NarrowAnswer> {
  return onSnapshotOnce(database().pool, async (client) => {
    const asOf = formatInstant(Date.now() * 1000);
    const { plant } = await loadPlant(client);
    const owing = await findOwing(client);
    const found = await findNarrowed(client, question, plant);
    return { asOf, complete: owing.length === 0, owing, ...found };
  });
}
