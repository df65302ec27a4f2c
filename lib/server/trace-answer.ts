import { countShipped } from '@/lib/data/trace/count-shipped';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';
import { onRecordOf } from '@/lib/server/where-used';

/** Asks once for each group on one snapshot; without a wish the certain group is shown unless it is empty. */
export function traceAnswer(question: WhereUsedQuestion): Promise<TraceAnswer> {
  const { place, relation, certainty, cursor: _, ...wanted } = question;
  const isNarrowed = place !== undefined || relation !== undefined;
  return onRecordOf(question, async (client) => {
    const completeness = await findCompleteness(client, question.knownAt);
    const certain = await findWhereUsed(client, { ...wanted, certainty: ['certain'] });
    const possible = await findWhereUsed(client, { ...wanted, certainty: ['possible'] });
    const groups = { certain, possible };
    const wish = certainty?.length === 1 ? certainty[0] : undefined;
    const shown = wish ?? (certain.counts.units === 0 && possible.counts.units > 0 ? 'possible' : 'certain');
    const filtered = { ...wanted, ...(place && { place }), ...(relation && { relation }) };
    const group = isNarrowed
      ? await findWhereUsed(client, { ...filtered, certainty: [shown] })
      : groups[shown];
    const { counts: asked } = isNarrowed
      ? await findWhereUsed(client, { ...filtered, limit: 1 })
      : {
          counts: { certain: certain.counts.units, possible: possible.counts.units },
        };
    const hasShipped = certain.counts.byPlace.shipped + possible.counts.byPlace.shipped > 0;
    return {
      ...completeness,
      counts: { certain: certain.counts, possible: possible.counts },
      shown,
      asked: { certain: asked.certain, possible: asked.possible },
      units: group.units,
      next: group.next,
      shipped: hasShipped ? await countShipped(client, wanted) : [],
    };
  });
}
