import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { ItemKind, Result } from '@/lib/domain/events/vocabulary';

/** What an item's own events say of it; null before it was received. */
export type ItemState = {
  kind: ItemKind;
  part: string | null;
  lot: string | null;
  supplier: string | null;
  /** Last known quantity: received or counted. */
  quantity: number | null;
  countedAtUs: number | null;
  inspected: Result | null;
  isRetired: boolean;
};

/** An item's state from its own events that count, in order; the last receipt says what it is. */
export function foldItem(events: readonly LoggedEvent[]): ItemState | null {
  let state: ItemState | null = null;
  let quantity: number | null = null;
  let countedAtUs: number | null = null;
  let inspected: Result | null = null;
  let isRetired = false;
  for (const event of events) {
    if (event.type === 'item.received') {
      const { kind, part = null, lot = null, supplier = null } = event.body;
      quantity = event.body.quantity ?? quantity;
      state = { kind, part, lot, supplier, quantity, countedAtUs, inspected, isRetired };
    }
    if (event.type === 'item.counted') [quantity, countedAtUs] = [event.body.quantity, event.atUs];
    if (event.type === 'item.inspected') inspected = event.body.result;
    if (event.type === 'item.retired') isRetired = true;
  }
  return state === null ? null : { ...state, quantity, countedAtUs, inspected, isRetired };
}
