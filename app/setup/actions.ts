'use server';

import { cookies, headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { completeSetup } from '@/lib/server/people/complete-setup';
import { formFields } from '@/lib/server/people/form-fields';
import { clientAddress, isSecureRequest } from '@/lib/server/people/request-origin';
import { startSession } from '@/lib/server/people/session';
import { signIn } from '@/lib/server/people/sign-in';
import type { SetupState } from '@/lib/ui/people/setup-form';

/** Makes the first administrator, signs them in and leads them to the plant, which is empty still. */
export async function makeFirstAdministrator(_before: SetupState, form: FormData): Promise<SetupState> {
  const blank = { token: '', badge: '', name: '', password: '', pin: '' };
  const fields = { ...blank, ...formFields(form, Object.keys(blank)) };
  const result = await completeSetup(fields);
  const { badge, name, password } = fields;
  if (!result.ok) return { badge, name, faults: result.errors };

  const requestHeaders = await headers();
  const address = clientAddress(requestHeaders);
  const signedIn = await signIn({ kind: 'desktop', badge, secret: password, address });
  if (!signedIn.ok) redirect('/sign-in');
  const isSecure = isSecureRequest(requestHeaders);
  await startSession(await cookies(), { session: signedIn.session, isSecure });
  redirect('/people');
}
