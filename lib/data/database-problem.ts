/** A database that cannot be used for a reason its message explains to the person who started the server. */
export class DatabaseProblem extends Error {
  override name = 'DatabaseProblem';
}
