'use server';

import { revalidatePath } from 'next/cache';
import { type DeskResult, recordAtDesk } from '@/lib/server/record-at-desk';
import { requirePrincipal } from '@/lib/server/require-principal';

/** Clears the form's `event`, which broke a rule, for its `reason`. */
export async function clearException(form: FormData): Promise<DeskResult> {
  const principal = await requirePrincipal('event:exception.cleared');
  const body = { event: textOf(form, 'event'), reason: textOf(form, 'reason') };
  const result = await recordAtDesk(principal, { type: 'exception.cleared', body });
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
