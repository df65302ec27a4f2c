import type { EventOf, EventType } from '@/lib/domain/events/catalogue';

/** An event before its device gave it id, time and number, and before anyone is known to have done it. */
export type EventDraft<T extends EventType = EventType> = {
  [K in T]: Omit<EventOf<K>, 'id' | 'at' | 'operator' | 'device' | 'deviceSeq' | 'uncertaintyMs' | 'gate'>;
}[T];
