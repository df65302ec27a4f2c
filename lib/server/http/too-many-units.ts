import { ProblemError } from '@/lib/server/http/problem';
import { TooManyUnitsError } from '@/lib/server/where-used';

/** Passes work on; throws a problem (409) when an answer about a moment would need the record of too many units. */
export async function withinUnits<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    if (!(error instanceof TooManyUnitsError)) throw error;
    throw new ProblemError('conflict', {
      detail: `For this moment, the record of more than ${error.max} units would have to be made again. Ask for one item instead of a lot or a part, for a shorter time, or for the answer of now.`,
    });
  }
}
