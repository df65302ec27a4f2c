'use server';

import { revalidatePath } from 'next/cache';
import { createAccount, type PeopleResult } from '@/lib/server/people/create-account';
import { formFields } from '@/lib/server/people/form-fields';
import { updateAccount } from '@/lib/server/people/update-account';
import { requirePrincipal } from '@/lib/server/require-principal';
import type { FormFault } from '@/lib/ui/people/form-fault';

/** Gives a person an account from the form's badge, name, role, pin and password. */
export async function addPerson(form: FormData): Promise<{ faults: FormFault[] }> {
  const { badge } = await requirePrincipal('people:manage');
  const fields = { badge: '', ...formFields(form, ['badge', 'name', 'role', 'pin', 'password']) };
  return answer(await createAccount(fields, badge));
}

/** Changes a person from the form's badge, role, state, pin and password; an empty secret stays as it is. */
export async function changePerson(form: FormData): Promise<{ faults: FormFault[] }> {
  await requirePrincipal('people:manage');
  const isActive = form.get('state') === 'active';
  const fields = { badge: '', ...formFields(form, ['badge', 'role', 'pin', 'password']), isActive };
  return answer(await updateAccount(fields));
}

function answer(result: PeopleResult): { faults: FormFault[] } {
  if (!result.ok) return { faults: result.errors };
  revalidatePath('/people');
  return { faults: [] };
}
