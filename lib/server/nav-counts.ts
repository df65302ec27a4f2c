import { may } from '@/lib/domain/people/permissions';
import type { Principal } from '@/lib/domain/people/principal';
import { readExceptionCount } from '@/lib/server/read-exceptions';

/** How many things wait for somebody on the screens that they may open. */
export async function navCounts(principal: Principal): Promise<{ exceptions?: number }> {
  return may(principal, 'event:exception.cleared') ? { exceptions: await readExceptionCount() } : {};
}
