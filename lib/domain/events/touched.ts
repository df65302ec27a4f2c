import type { EventOf } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** What must be made again when an event comes or is voided, beside the rows that the event owns. */
export type Touched = {
  units: string[];
  items: string[];
  /** Containers whose own events changed. */
  containers: string[];
  /** Containers that are merely mentioned, and so become known. */
  mentioned: string[];
  holds: string[];
  joining: { inner: string; outer: string } | null;
};

const NOTHING: Touched = { units: [], items: [], containers: [], mentioned: [], holds: [], joining: null };

/** The things whose state an event takes part in; slots aside, which are found by the event itself. */
export function touchedBy(event: LoggedEvent): Touched {
  switch (event.type) {
    case 'unit.started':
    case 'unit.processed':
    case 'unit.signed':
    case 'unit.scrapped':
    case 'unit.returned':
    case 'part.removed':
    case 'part.installed':
      return { ...NOTHING, units: [event.body.unit] };
    case 'unit.packed':
    case 'unit.unpacked':
      return { ...NOTHING, units: [event.body.unit], mentioned: [event.body.container] };
    case 'unit.joined':
      return {
        ...NOTHING,
        units: [event.body.unit],
        joining: { inner: event.body.unit, outer: event.body.into },
      };
    case 'unit.separated':
      return {
        ...NOTHING,
        units: [event.body.unit],
        joining: { inner: event.body.unit, outer: event.body.from },
      };
    case 'container.nested':
      return { ...NOTHING, containers: [event.body.container], mentioned: [event.body.into] };
    case 'container.unnested':
      return { ...NOTHING, containers: [event.body.container], mentioned: [event.body.from] };
    case 'container.shipped':
      return { ...NOTHING, containers: [event.body.container] };
    case 'hold.placed':
      return { ...NOTHING, holds: [event.id] };
    case 'hold.released':
      return { ...NOTHING, holds: [event.body.hold] };
    case 'exception.cleared':
      return { ...NOTHING, holds: [event.body.event] };
    case 'item.received':
    case 'item.counted':
    case 'item.inspected':
    case 'item.retired':
      return { ...NOTHING, items: [event.body.item] };
    case 'item.mounted':
    case 'item.unmounted':
    case 'item.spliced':
    case 'device.retired':
    case 'label.printed':
    case 'event.voided':
      return NOTHING;
    default:
      return event satisfies never;
  }
}

/** Whether an event changes what stands in a slot of its station. */
export function changesSlot(
  event: LoggedEvent,
): event is LoggedEvent & EventOf<'item.mounted' | 'item.unmounted' | 'item.spliced'> {
  return event.type === 'item.mounted' || event.type === 'item.unmounted' || event.type === 'item.spliced';
}
