'use server';

import { cookies, headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { findPrincipal } from '@/lib/server/people/find-principal';
import { clientAddress, isSecureRequest } from '@/lib/server/people/request-origin';
import { safeReturnPath } from '@/lib/server/people/safe-return-path';
import { endSession, startSession } from '@/lib/server/people/session';
import { signIn } from '@/lib/server/people/sign-in';
import type { SignInState } from '@/lib/ui/people/sign-in-state';

/** Signs in with the form's badge and PIN, for a shared station, and goes to the page that was asked for. */
export async function signInAtStation(_before: SignInState, form: FormData): Promise<SignInState> {
  return signInWith('station', form);
}

/** Signs in with the form's badge and password, and goes to the page that was asked for. */
export async function signInAtDesk(_before: SignInState, form: FormData): Promise<SignInState> {
  return signInWith('desktop', form);
}

/** Ends the session of this browser. */
export async function signOut(): Promise<void> {
  endSession(await cookies());
  redirect('/sign-in');
}

async function signInWith(kind: 'station' | 'desktop', form: FormData): Promise<SignInState> {
  const requestHeaders = await headers();
  const badge = textOf(form, 'badge').trim();
  const secret = textOf(form, 'secret');
  const result = await signIn({ kind, badge, secret, address: clientAddress(requestHeaders) });
  if (!result.ok) return { badge, refusal: result.refusal };
  const isSecure = isSecureRequest(requestHeaders);
  await startSession(await cookies(), { session: result.session, isSecure });
  const asked = safeReturnPath(form.get('to'));
  redirect(asked === '/' && kind === 'station' ? firstScreen(await findPrincipal(result.session)) : asked);
}

/** Where somebody's work at a shared station begins when they asked for no page. */
function firstScreen(principal: PersonPrincipal | null): string {
  switch (principal?.role) {
    case 'operator':
      return '/station';
    case 'handler':
      return '/changeover';
    case 'packer':
      return '/pack';
    default:
      return '/';
  }
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value : '';
}
