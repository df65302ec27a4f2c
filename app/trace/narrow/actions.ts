'use server';

import { revalidatePath } from 'next/cache';
import type { Refusal } from '@/lib/domain/gate/refusals';
import {
  type HoldBatch,
  type HoldPlan,
  type HoldWish,
  holdBatchSchema,
  holdWishSchema,
} from '@/lib/domain/holds/hold-plan';
import { planHolds } from '@/lib/server/plan-holds';
import { recordManyAtDesk } from '@/lib/server/record-at-desk';
import { requirePrincipal } from '@/lib/server/require-principal';

/** Which holds the answer wants, each with its id; records nothing. */
export async function planNarrowedHolds(wish: HoldWish): Promise<HoldPlan> {
  await requirePrincipal('event:hold.placed');
  return planHolds(holdWishSchema.parse(wish));
}

/** Records a part of the plan; answers with what was refused. */
export async function recordNarrowedHolds(
  batch: HoldBatch,
): Promise<{ unit: string; refusals: Refusal[] }[]> {
  const principal = await requirePrincipal('event:hold.placed');
  const { at, reason, holds } = holdBatchSchema.parse(batch);
  const drafts = holds.map(({ id, unit }) => ({
    id,
    type: 'hold.placed',
    body: { target: { kind: 'unit', id: unit }, reason },
  }));
  const results = await recordManyAtDesk(principal, at, drafts);
  revalidatePath('/', 'layout');
  return holds.flatMap(({ unit }, index) => {
    const result = results[index];
    return result === undefined || result.ok ? [] : [{ unit, refusals: result.refusals }];
  });
}
