'use server';

import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import { safeReturnPath } from '@/lib/server/people/safe-return-path';
import { endSession } from '@/lib/server/people/session';

/** Ends the session and asks for the next person's badge, who comes back to the screen that was open. */
export async function changePersonAt(returnTo: string): Promise<void> {
  endSession(await cookies());
  redirect(`/sign-in?to=${encodeURIComponent(safeReturnPath(returnTo))}`);
}
