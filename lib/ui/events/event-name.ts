import type { EventType } from '@/lib/domain/events/catalogue';
import { type EventMessageKey, events } from '@/lib/ui/messages/en/events';

/** Key of an event type's name in the catalogue, where the dot of a type would nest a message. */
export function eventMessageKey(type: EventType): EventMessageKey {
  const key = type.replace('.', '_');
  if (!isKey(key)) throw new Error(`No words for events of type ${type}.`);
  return key;
}

function isKey(key: string): key is EventMessageKey {
  return Object.hasOwn(events, key);
}
