import { cookies } from 'next/headers';
import { cache } from 'react';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { findPrincipal } from '@/lib/server/people/find-principal';
import { sessionOfCookies } from '@/lib/server/people/session';

/** Who looks at the page that is being made, or null; asked once for a page, however many of its parts ask. */
export const currentPrincipal = cache(async (): Promise<PersonPrincipal | null> => {
  return findPrincipal(await sessionOfCookies(await cookies()));
});
