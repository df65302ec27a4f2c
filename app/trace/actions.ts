'use server';

import { revalidatePath } from 'next/cache';
import { type HeldUnits, holdUnits, newHoldBatch } from '@/lib/server/hold-units';
import { requirePrincipal } from '@/lib/server/require-principal';

/** Begins a batch of holds. */
export async function beginHolds(): Promise<string> {
  await requirePrincipal('event:hold.placed');
  return newHoldBatch();
}

/** Holds some units of a batch (`batch`, `units`, `reason`). */
export async function holdSome(request: unknown): Promise<HeldUnits> {
  return holdUnits(await requirePrincipal('event:hold.placed'), request);
}

/** The batch is done: pages tell of its holds. */
export async function endHolds(): Promise<void> {
  await requirePrincipal('event:hold.placed');
  revalidatePath('/', 'layout');
}
