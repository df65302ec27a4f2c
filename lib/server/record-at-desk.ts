import { v7 } from 'uuid';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { formatInstant } from '@/lib/domain/time';
import { appendEvents } from '@/lib/server/append-events';
import { readPlant } from '@/lib/server/read-plant';

/** What became of something that was recorded from a page. */
export type DeskResult = { ok: true } | { ok: false; refusals: Refusal[] };

type Draft = { type: string; body: Record<string, unknown> };

/**
 * Records what a person decides at a desk, now, under the gate; the event names them as its operator when the plant
 * knows their badge, and the log keeps who brought it in any case.
 */
export async function recordAtDesk(principal: PersonPrincipal, draft: Draft): Promise<DeskResult> {
  const [result] = await recordManyAtDesk(principal, formatInstant(Date.now() * 1000), [
    { ...draft, id: v7() },
  ]);
  return result ?? { ok: true };
}

/** The same for decisions made together at a time, in order; one that was recorded under its id before is not again. */
export async function recordManyAtDesk(
  principal: PersonPrincipal,
  at: string,
  drafts: readonly (Draft & { id: string })[],
): Promise<DeskResult[]> {
  const plant = await readPlant();
  const isOperator = plant.operator(principal.badge) !== null;
  const envelope = { at, gate: 'enforce', ...(isOperator && { operator: principal.badge }) };
  const results = await appendEvents(
    drafts.map((draft) => ({ ...draft, ...envelope })),
    principal,
  );
  return results.map(({ refusal }) => {
    if (refusal === undefined) return { ok: true };
    const { also = [], ...first } = refusal;
    return { ok: false, refusals: [first, ...also] };
  });
}
