import { type LoggedEvent, toLogged } from '@/lib/domain/events/logged-event';
import type { DemoPlan } from '@/scripts/demo/plan-demo';

/** The events of a plan that count, in order: neither refused nor voided. */
export function recordedEvents(plan: DemoPlan): LoggedEvent[] {
  const voided = new Set<string>();
  for (const event of plan.events) if (event.type === 'event.voided') voided.add(event.body.event);
  return plan.events
    .filter(({ id }) => !plan.expectedRefusals.has(id) && !voided.has(id))
    .map((event) => toLogged(event));
}
