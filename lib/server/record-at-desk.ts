import { v7 } from 'uuid';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { formatInstant } from '@/lib/domain/time';
import { appendEvents } from '@/lib/server/append-events';
import { readPlant } from '@/lib/server/read-plant';

/** What became of something that was recorded from a page. */
export type DeskResult = { ok: true } | { ok: false; refusals: Refusal[] };

/**
 * Records what a person decides at a desk, now, under the gate; the event names them as its operator when the plant
 * knows their badge, and the log keeps who brought it in any case.
 */
export async function recordAtDesk(
  principal: PersonPrincipal,
  draft: { type: string; body: Record<string, unknown> },
): Promise<DeskResult> {
  const plant = await readPlant();
  const isOperator = plant.operator(principal.badge) !== null;
  const event = {
    ...draft,
    id: v7(),
    at: formatInstant(Date.now() * 1000),
    gate: 'enforce',
    ...(isOperator && { operator: principal.badge }),
  };
  const [result] = await appendEvents([event], principal);
  if (result?.refusal === undefined) return { ok: true };
  const { also = [], ...first } = result.refusal;
  return { ok: false, refusals: [first, ...also] };
}
