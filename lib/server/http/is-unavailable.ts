// What node-postgres says when a connection is lost or cannot be had; it gives these no code.
const LOST_CONNECTION =
  /^(Connection terminated|timeout exceeded when trying to connect|Client has encountered a connection error)/;
const NETWORK_CODES = ['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ENOTFOUND', 'ETIMEDOUT', 'EHOSTUNREACH'];
// PostgreSQL: connection exceptions, too many connections, shutting down or starting up.
const SQLSTATE = /^(08...|53300|57P0[1-3])$/;
// Prisma: cannot reach, timed out, closed.
const PRISMA_CODES = ['P1001', 'P1002', 'P1008', 'P1017', 'P2024'];

/** Whether an error says that the database could not be asked, so that asking again later may work. */
export function isUnavailable(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  if (NETWORK_CODES.includes(code) || PRISMA_CODES.includes(code) || SQLSTATE.test(code)) return true;
  if (LOST_CONNECTION.test(error.message)) return true;
  if (error instanceof AggregateError && error.errors.some(isUnavailable)) return true;
  return error.cause !== undefined && isUnavailable(error.cause);
}
