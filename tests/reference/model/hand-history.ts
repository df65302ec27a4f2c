import { ReferenceModel } from '@/tests/reference/model/reference-model';
import type { PlantFile, WireEvent } from '@/tests/reference/model/wire-types';

/** A printer, a placer with three reel slots, and one board with a sub-assembly: enough for cases by hand. */
export const HAND_PLANT: PlantFile = {
  site: { code: 'TVE', name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
  parts: [{ number: 'C-100N' }, { number: 'R-10K' }, { number: 'CONN-8' }],
  stations: [
    { code: 'PRINT', line: 'L1', operation: 'print', slots: [{ name: 'stencil', holds: 'stencil' }] },
    {
      code: 'PLACE',
      line: 'L1',
      operation: 'place',
      slots: [
        { name: 'F1', holds: 'reel' },
        { name: 'F2', holds: 'reel' },
        { name: 'F3', holds: 'reel' },
      ],
    },
    { code: 'XRAY', line: 'L1', operation: 'xray', slots: [] },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      route: [
        { step: 10, operation: 'print' },
        { step: 20, operation: 'place' },
        { step: 60, operation: 'xray', sample: 0.12 },
      ],
      bom: [
        { part: 'C-100N', positions: ['C1', 'C2'], station: 'PLACE', slot: 'F1' },
        { part: 'R-10K', positions: ['R1'], station: 'PLACE', slot: 'F2' },
        { part: 'CONN-8', positions: ['J1'] },
        { product: 'PSU2', positions: ['A1'] },
      ],
    },
    { number: 'PSU2', revision: 'A', route: [], bom: [] },
  ],
  operators: [{ badge: 'op-1', name: 'Operator 1', operations: ['print', 'place'] }],
};

type Extra = { station?: string; operator?: string; uncertaintyMs?: number };
type Facts<Type extends WireEvent['type']> = Omit<(WireEvent & { type: Type })['body'], 'unit' | 'result'>;

/** A model of the hand-made plant to which everything has happened. */
export function modelOf(events: readonly WireEvent[]): ReferenceModel {
  const model = new ReferenceModel(HAND_PLANT);
  for (const event of events) model.record(event);
  return model;
}

/** A UUID v7 that orders by `order`. */
export function idOf(order: number): string {
  return `0198c0de-0000-7000-8000-${String(order).padStart(12, '0')}`;
}

/** An envelope on the day of all hand-made cases; `time` is `HH:MM` or `HH:MM:SS.ffffff`, in UTC. */
export function stamped(order: number, time: string, extra: Extra = {}) {
  return { id: idOf(order), at: instantOf(time), ...extra };
}

/** The RFC 3339 text of a time of that day. */
export function instantOf(time: string): string {
  return `2026-03-02T${time.length === 5 ? `${time}:00` : time}Z`;
}

/** WX4 revision C, unless `facts` say otherwise. */
export function started(
  order: number,
  time: string,
  unit: string,
  facts: Partial<Facts<'unit.started'>> = {},
): WireEvent {
  const body = { unit, product: 'WX4', revision: 'C', ...facts };
  return { ...stamped(order, time), type: 'unit.started', body };
}

/** A pass at PLACE, unless `extra` names another station. */
export function passed(
  order: number,
  time: string,
  unit: string,
  extra: Extra = {},
  facts: Facts<'unit.processed'> = {},
): WireEvent {
  const envelope = stamped(order, time, { station: 'PLACE', ...extra });
  return { ...envelope, type: 'unit.processed', body: { unit, result: 'pass', ...facts } };
}

/** A mount at PLACE, unless `extra` names another station. */
export function mounted(
  order: number,
  time: string,
  item: string,
  slot: string,
  extra: Extra = {},
): WireEvent {
  const envelope = stamped(order, time, { station: 'PLACE', ...extra });
  return { ...envelope, type: 'item.mounted', body: { item, slot } };
}

/** An unmount at PLACE, unless `extra` names another station. */
export function unmounted(
  order: number,
  time: string,
  item: string,
  slot: string,
  extra: Extra = {},
): WireEvent {
  const envelope = stamped(order, time, { station: 'PLACE', ...extra });
  return { ...envelope, type: 'item.unmounted', body: { item, slot } };
}

/** An item of some kind, with what else was written down of it. */
export function received(
  order: number,
  item: string,
  kind: string,
  facts: { part?: string; lot?: string } = {},
): WireEvent {
  return { ...stamped(order, '06:00'), type: 'item.received', body: { item, kind, ...facts } };
}

/** A part leaves a position. */
export function removed(order: number, time: string, unit: string, position: string): WireEvent {
  return { ...stamped(order, time), type: 'part.removed', body: { unit, position } };
}

/** A part goes from a position of one unit into the same position of another. */
export function salvaged(
  order: number,
  time: string,
  fromUnit: string,
  position: string,
  unit: string,
): WireEvent {
  const body = { unit, position, fromUnit, fromPosition: position };
  return { ...stamped(order, time), type: 'part.installed', body };
}

/** A unit goes into another. */
export function joined(order: number, time: string, unit: string, into: string): WireEvent {
  return { ...stamped(order, time), type: 'unit.joined', body: { unit, into, position: 'A1' } };
}

/** A unit comes out of another. */
export function separated(order: number, time: string, unit: string, from: string): WireEvent {
  return { ...stamped(order, time), type: 'unit.separated', body: { unit, from } };
}

/** An event that says another never happened. */
export function voided(order: number, time: string, event: string): WireEvent {
  return { ...stamped(order, time), type: 'event.voided', body: { event, reason: 'by mistake' } };
}
