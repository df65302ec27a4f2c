import { countExceptions, findExceptions } from '@/lib/data/exceptions/find-exceptions';
import { onSnapshot } from '@/lib/data/transaction';
import type { ExceptionList } from '@/lib/domain/exceptions/exception-list';
import { database } from '@/lib/server/database';

/** Events that broke a rule and were recorded all the same, for QA to look at. */
export function readExceptions(): Promise<ExceptionList> {
  return onSnapshot(database().pool, findExceptions);
}

/** How many of them nobody has cleared yet. */
export function readExceptionCount(): Promise<number> {
  return countExceptions(database().pool);
}
