'use server';

import { revalidatePath } from 'next/cache';
import { type DeskResult, recordAtDesk } from '@/lib/server/record-at-desk';
import { requirePrincipal } from '@/lib/server/require-principal';

/** Places a hold on the form's target (`kind`, `id`) for its `reason`. */
export async function placeHold(form: FormData): Promise<DeskResult> {
  const principal = await requirePrincipal('event:hold.placed');
  const target = { kind: textOf(form, 'kind'), id: textOf(form, 'id') };
  return refreshed(
    await recordAtDesk(principal, {
      type: 'hold.placed',
      body: { target, reason: textOf(form, 'reason') },
    }),
  );
}

/** Releases the form's `hold` with its `disposition` and `reason`. */
export async function releaseHold(form: FormData): Promise<DeskResult> {
  const principal = await requirePrincipal('event:hold.released');
  const body = {
    hold: textOf(form, 'hold'),
    disposition: textOf(form, 'disposition'),
    reason: textOf(form, 'reason'),
  };
  return refreshed(await recordAtDesk(principal, { type: 'hold.released', body }));
}

/** Voids the form's `event` for its `reason`. */
export async function voidEvent(form: FormData): Promise<DeskResult> {
  const principal = await requirePrincipal('event:event.voided');
  const body = { event: textOf(form, 'event'), reason: textOf(form, 'reason') };
  return refreshed(await recordAtDesk(principal, { type: 'event.voided', body }));
}

/** Scraps the form's `unit` for its `reason`. */
export async function scrapUnit(form: FormData): Promise<DeskResult> {
  const principal = await requirePrincipal('event:unit.scrapped');
  const body = { unit: textOf(form, 'unit'), reason: textOf(form, 'reason') };
  return refreshed(await recordAtDesk(principal, { type: 'unit.scrapped', body }));
}

function refreshed(result: DeskResult): DeskResult {
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
