import { contactNow, noteContact } from '@/lib/offline/contact';

/** A server that takes longer is not waited for. */
export const ANSWER_LIMIT_MS = 3000;

/**
 * What the server says in time, or null. It is asked only while it is known to be there; one that says nothing in time
 * is not, until it is heard again: of the scans that follow, none waits for it.
 */
export async function inTime<T>(ask: () => Promise<T>): Promise<T | null> {
  if (!contactNow().isOnline) return null;
  const answer = await within(ANSWER_LIMIT_MS, ask());
  if (answer === null) noteContact(false);
  return answer;
}

/** What work comes to within a time, else null; a failure is one too. */
export function within<T>(limitMs: number, work: Promise<T>): Promise<T | null> {
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), limitMs));
  return Promise.race([work.catch(() => null), late]);
}
