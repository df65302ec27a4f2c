import { loadPlant } from '@/lib/data/plant/load-plant';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findNarrowed } from '@/lib/data/trace/narrow';
import { onSnapshotOnce } from '@/lib/data/transaction';
import type { NarrowAnswer } from '@/lib/domain/genealogy/narrow-answer';
import type { NarrowQuestion } from '@/lib/domain/genealogy/narrow-question';
import { database } from '@/lib/server/database';

/** Which units no condition rules out, what each condition does to the set, and what the answer cannot know. */
export function narrow(question: NarrowQuestion): Promise<NarrowAnswer> {
  return onSnapshotOnce(database().pool, async (client) => {
    const { plant } = await loadPlant(client);
    const completeness = await findCompleteness(client);
    const found = await findNarrowed(client, question, plant);
    return { ...completeness, ...found };
  });
}
