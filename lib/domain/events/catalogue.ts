import { z } from 'zod';
import { deviceRetired } from '@/lib/domain/events/device-events';
import { exceptionCleared } from '@/lib/domain/events/exception-events';
import { eventVoided, holdPlaced, holdReleased } from '@/lib/domain/events/hold-events';
import {
  itemCounted,
  itemInspected,
  itemMounted,
  itemReceived,
  itemRetired,
  itemSpliced,
  itemUnmounted,
} from '@/lib/domain/events/item-events';
import { labelPrinted } from '@/lib/domain/events/label-events';
import {
  containerNested,
  containerShipped,
  containerUnnested,
  unitPacked,
  unitUnpacked,
} from '@/lib/domain/events/packing-events';
import {
  partInstalled,
  partRemoved,
  unitJoined,
  unitProcessed,
  unitReturned,
  unitScrapped,
  unitSeparated,
  unitSigned,
  unitStarted,
} from '@/lib/domain/events/unit-events';

/** Every event type, declared once: schemas, documents, forms and test generators derive from this list. */
export const EVENT_CATALOGUE = [
  unitStarted,
  unitProcessed,
  unitSigned,
  unitJoined,
  unitSeparated,
  partRemoved,
  partInstalled,
  unitScrapped,
  unitPacked,
  unitUnpacked,
  containerNested,
  containerUnnested,
  containerShipped,
  unitReturned,
  holdPlaced,
  holdReleased,
  exceptionCleared,
  itemReceived,
  itemCounted,
  itemMounted,
  itemUnmounted,
  itemSpliced,
  itemInspected,
  itemRetired,
  deviceRetired,
  labelPrinted,
  eventVoided,
] as const;

/** An event as the wire carries it. */
export const eventSchema = z.discriminatedUnion('type', [
  unitStarted.schema,
  unitProcessed.schema,
  unitSigned.schema,
  unitJoined.schema,
  unitSeparated.schema,
  partRemoved.schema,
  partInstalled.schema,
  unitScrapped.schema,
  unitPacked.schema,
  unitUnpacked.schema,
  containerNested.schema,
  containerUnnested.schema,
  containerShipped.schema,
  unitReturned.schema,
  holdPlaced.schema,
  holdReleased.schema,
  exceptionCleared.schema,
  itemReceived.schema,
  itemCounted.schema,
  itemMounted.schema,
  itemUnmounted.schema,
  itemSpliced.schema,
  itemInspected.schema,
  itemRetired.schema,
  deviceRetired.schema,
  labelPrinted.schema,
  eventVoided.schema,
]);

export type WireEvent = z.infer<typeof eventSchema>;
export type EventType = WireEvent['type'];
export type EventOf<T extends EventType> = Extract<WireEvent, { type: T }>;

/** Titles by type, for lists and forms. */
export const EVENT_TYPES: readonly EventType[] = EVENT_CATALOGUE.map((declaration) => declaration.type);
