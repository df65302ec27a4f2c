import { DatabaseProblem } from '@/lib/data/database-problem';

/** A server that cannot start for a reason its message explains to the person who started it. */
export class StartProblem extends Error {
  override name = 'StartProblem';
}

/** What to print for an error: its sentence when it is meant for a person, else everything known about it. */
export function explain(error: unknown): unknown {
  return error instanceof StartProblem || error instanceof DatabaseProblem ? error.message : error;
}
