'use server';

import { revalidatePath } from 'next/cache';
import { type DeskResult, recordAtDesk } from '@/lib/server/record-at-desk';
import { requirePrincipal } from '@/lib/server/require-principal';

/** Retires the form's `device` as lost, for its `reason`. */
export async function retireDevice(form: FormData): Promise<DeskResult> {
  const principal = await requirePrincipal('event:device.retired');
  const body = { device: textOf(form, 'device'), reason: textOf(form, 'reason') };
  const result = await recordAtDesk(principal, { type: 'device.retired', body });
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
