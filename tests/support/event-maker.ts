import { type EventOf, type EventType, eventSchema, type WireEvent } from '@/lib/domain/events/catalogue';
import type { LabelKind } from '@/lib/domain/events/vocabulary';
import { formatInstant, instantOf } from '@/lib/domain/time';

/** What a sender may say beside the body; `at` and `id` are made when they are not given. */
export type Envelope = Partial<
  Pick<WireEvent, 'id' | 'at' | 'station' | 'operator' | 'device' | 'deviceSeq' | 'uncertaintyMs' | 'gate'>
>;

type Body<T extends EventType> = EventOf<T>['body'];
type Extra<T extends EventType, K extends PropertyKey> = Omit<Body<T>, K>;

const MINUTE_US = 60_000_000;

const RUN = '0198c0de';

/** An id that sorts by the number it is made from; `room` (0 to 65,535) keeps makers apart, `run` (8 hex) processes. */
export function numberedId(number: number, room = 0, run = RUN): string {
  return `${run}-${room.toString(16).padStart(4, '0')}-7000-8000-${number.toString(16).padStart(12, '0')}`;
}

let rooms = 0;

/**
 * Makes valid events one minute after the other, beginning at `startAt` (RFC 3339), with ids that nobody else makes in
 * this process, or anywhere with a `run` of its own. Every function takes what the event is about, then what its envelope says beside that.
 */
export function eventMaker(startAt = '2026-03-02T06:00:00Z', run = RUN) {
  const room = ++rooms;
  const startUs = instantOf(startAt);
  let made = 0;

  function make(type: EventType, body: object, envelope: Envelope): WireEvent {
    made += 1;
    const at = formatInstant(startUs + made * MINUTE_US);
    return eventSchema.parse({ id: numberedId(made, room, run), at, type, body, ...envelope });
  }

  return {
    /** The time of the minute with the given number; events take the minutes from 1 on. */
    minute: (number: number) => formatInstant(startUs + number * MINUTE_US),
    make,
    started: (body: Body<'unit.started'>, envelope: Envelope = {}) => make('unit.started', body, envelope),
    passed: (
      unit: string,
      station: string,
      envelope: Envelope = {},
      facts: Partial<Extra<'unit.processed', 'unit'>> = {},
    ) => make('unit.processed', { unit, result: 'pass', ...facts }, { station, ...envelope }),
    failed: (unit: string, station: string, envelope: Envelope = {}) =>
      make('unit.processed', { unit, result: 'fail' }, { station, ...envelope }),
    signed: (unit: string, envelope: Envelope = {}) =>
      make('unit.signed', { unit, meaning: 'released for packing' }, envelope),
    joined: (unit: string, into: string, envelope: Envelope = {}) =>
      make('unit.joined', { unit, into, position: 'A1' }, envelope),
    separated: (unit: string, from: string, envelope: Envelope = {}) =>
      make('unit.separated', { unit, from }, envelope),
    removed: (unit: string, position: string, envelope: Envelope = {}) =>
      make('part.removed', { unit, position }, envelope),
    installed: (body: Body<'part.installed'>, envelope: Envelope = {}) =>
      make('part.installed', body, envelope),
    scrapped: (unit: string, envelope: Envelope = {}) =>
      make('unit.scrapped', { unit, reason: 'burnt' }, envelope),
    packed: (unit: string, container: string, envelope: Envelope = {}) =>
      make('unit.packed', { unit, container }, envelope),
    unpacked: (unit: string, container: string, envelope: Envelope = {}) =>
      make('unit.unpacked', { unit, container }, envelope),
    nested: (container: string, into: string, envelope: Envelope = {}) =>
      make('container.nested', { container, into }, envelope),
    unnested: (container: string, from: string, envelope: Envelope = {}) =>
      make('container.unnested', { container, from }, envelope),
    shipped: (container: string, envelope: Envelope = {}) =>
      make('container.shipped', { container, shipment: 'SH-1', customer: 'Northgate Rail' }, envelope),
    returned: (unit: string, envelope: Envelope = {}) =>
      make('unit.returned', { unit, symptom: 'dead' }, envelope),
    held: (kind: 'unit' | 'item' | 'lot' | 'container', id: string, envelope: Envelope = {}) =>
      make('hold.placed', { target: { kind, id }, reason: 'cracks' }, envelope),
    released: (hold: string, envelope: Envelope = {}) =>
      make('hold.released', { hold, disposition: 'use as is', reason: 'inspected' }, envelope),
    received: (body: Body<'item.received'>, envelope: Envelope = {}) => make('item.received', body, envelope),
    counted: (item: string, envelope: Envelope = {}) =>
      make('item.counted', { item, quantity: 10, method: 'x-ray' }, envelope),
    inspected: (item: string, envelope: Envelope = {}) =>
      make('item.inspected', { item, result: 'pass' }, envelope),
    retired: (item: string, envelope: Envelope = {}) =>
      make('item.retired', { item, reason: 'empty' }, envelope),
    mounted: (item: string, station: string, slot: string, envelope: Envelope = {}) =>
      make('item.mounted', { item, slot }, { station, ...envelope }),
    spliced: (
      reels: { from: string; to: string; greyUnits?: number },
      station: string,
      slot: string,
      envelope: Envelope = {},
    ) => make('item.spliced', { ...reels, slot }, { station, ...envelope }),
    unmounted: (item: string, station: string, slot: string, envelope: Envelope = {}) =>
      make('item.unmounted', { item, slot }, { station, ...envelope }),
    labelled: (kind: LabelKind, id: string, { reason, ...envelope }: Envelope & { reason?: string } = {}) =>
      make(
        'label.printed',
        { target: { kind, id }, copies: 1, ...(reason !== undefined && { reason }) },
        envelope,
      ),
    voided: (event: string, envelope: Envelope = {}) =>
      make('event.voided', { event, reason: 'scanned by mistake' }, envelope),
    exceptionCleared: (event: string, envelope: Envelope = {}) =>
      make('exception.cleared', { event, reason: 'looked at under the microscope' }, envelope),
    deviceRetired: (device: string, envelope: Envelope = {}) =>
      make('device.retired', { device, reason: 'fell into the wave solder' }, envelope),
  };
}

export type EventMaker = ReturnType<typeof eventMaker>;
