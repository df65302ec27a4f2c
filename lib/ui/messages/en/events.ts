import type { EventType } from '@/lib/domain/events/catalogue';

/** A short name for every event type, for timelines and lists. The dot of a type would nest a message: it is `_`. */
export const events = {
  unit_started: 'Unit started',
  unit_processed: 'Unit processed',
  unit_signed: 'Unit signed off',
  unit_joined: 'Unit joined',
  unit_separated: 'Unit separated',
  part_removed: 'Part removed',
  part_installed: 'Part installed',
  unit_scrapped: 'Unit scrapped',
  unit_packed: 'Unit packed',
  unit_unpacked: 'Unit unpacked',
  container_nested: 'Container nested',
  container_unnested: 'Container taken out',
  container_shipped: 'Container shipped',
  unit_returned: 'Unit returned',
  hold_placed: 'Hold placed',
  exception_cleared: 'Exception cleared',
  hold_released: 'Hold released',
  item_received: 'Item received',
  item_counted: 'Item counted',
  item_mounted: 'Item mounted',
  item_unmounted: 'Item unmounted',
  item_spliced: 'Items spliced',
  item_inspected: 'Item inspected',
  item_retired: 'Item retired',
  device_retired: 'Device retired',
  label_printed: 'Label printed',
  event_voided: 'Event voided',
} as const satisfies Record<EventMessageKey, string>;

/** Key of an event type's name in the catalogue. */
export type EventMessageKey = EventType extends infer T
  ? T extends `${infer A}.${infer B}`
    ? `${A}_${B}`
    : never
  : never;
