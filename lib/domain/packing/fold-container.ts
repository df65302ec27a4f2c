import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** What a container's own events say of it. */
export type ContainerState = {
  /** The container around it, or null. */
  inside: string | null;
  shipping: { shipment: string; customer: string; destination: string | null; atUs: number } | null;
};

/** A container's state from its own events that count, in order: the last nesting and the last shipping stand. */
export function foldContainer(events: readonly LoggedEvent[]): ContainerState {
  let state: ContainerState = { inside: null, shipping: null };
  for (const event of events) {
    if (event.type === 'container.nested') state = { ...state, inside: event.body.into };
    if (event.type === 'container.unnested' && state.inside === event.body.from)
      state = { ...state, inside: null };
    if (event.type === 'container.shipped') {
      const { shipment, customer, destination = null } = event.body;
      state = { ...state, shipping: { shipment, customer, destination, atUs: event.atUs } };
    }
  }
  return state;
}
