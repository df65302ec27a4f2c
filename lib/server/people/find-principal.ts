import { findAccount } from '@/lib/data/people/find-account';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { people } from '@/lib/server/people/people';
import type { Session } from '@/lib/server/people/session';

/**
 * Whom a session stands for now, or null when it is over: the account is closed, or its PIN, password or role was
 * changed since. The role is the account's, not the one at sign-in.
 */
export async function findPrincipal(session: Session | null): Promise<PersonPrincipal | null> {
  if (session === null) return null;
  const account = await findAccount(people(), session.badge);
  if (account === null || !account.isActive || account.sessionEpoch !== session.epoch) return null;
  return { kind: 'person', badge: account.badge, role: account.role };
}
