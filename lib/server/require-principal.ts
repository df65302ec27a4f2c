import { redirect } from 'next/navigation';
import { type Action, may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { currentPrincipal } from '@/lib/server/people/current-principal';

/**
 * Who opens a page or runs a server action. Without a session the browser is sent to sign in, and afterwards back to
 * `returnTo` (a path of ours); a role that may not do the action is sent to a page that says so.
 */
export async function requirePrincipal(
  action: Action,
  { returnTo }: { returnTo?: string } = {},
): Promise<PersonPrincipal> {
  const principal = await currentPrincipal();
  if (principal === null)
    redirect(returnTo === undefined ? '/sign-in' : `/sign-in?to=${encodeURIComponent(returnTo)}`);
  if (!may(principal, action)) redirect('/not-permitted');
  return principal;
}
