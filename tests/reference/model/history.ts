import type { ModelWindow } from '@/tests/reference/model/doubt-windows';
import { compareKeys, instantUs, type OrderKey } from '@/tests/reference/model/order';
import type { EventOf, PlantFile, PlantProduct, WireEvent } from '@/tests/reference/model/wire-types';

/** An event with its place in the order and its doubt in microseconds. */
export type Recorded<Event extends WireEvent = WireEvent> = { event: Event; key: OrderKey; doubtUs: number };

/** Everything a question is answered from, in order; `live` is what no void has taken away. */
export type History = {
  plant: PlantFile;
  /** All that has arrived, whenever it happened: it tells what devices still owe. */
  arrived: readonly Recorded[];
  /** The times in which the record itself is in doubt, as far as they concern the question. */
  windows: readonly ModelWindow[];
  all: readonly Recorded[];
  live: readonly Recorded[];
  voidedIds: ReadonlySet<string>;
};

/** The history up to `untilUs`, included; voids count whenever they happened. */
export function historyOf(plant: PlantFile, recorded: readonly Recorded[], untilUs = Infinity): History {
  const voidIds = new Set<string>();
  for (const { event, key } of recorded) if (event.type === 'event.voided') voidIds.add(key.id);
  const voidedIds = new Set<string>();
  for (const { event } of recorded) {
    if (event.type !== 'event.voided') continue;
    const named = event.body.event.toLowerCase();
    if (!voidIds.has(named)) voidedIds.add(named);
  }
  const all = recorded
    .filter(({ key }) => key.us <= untilUs)
    .sort((left, right) => compareKeys(left.key, right.key));
  return {
    plant,
    arrived: recorded,
    windows: [],
    all,
    live: all.filter(({ key }) => !voidedIds.has(key.id)),
    voidedIds,
  };
}

/** An event as the model keeps it. */
export function recordedFrom(event: WireEvent): Recorded {
  return {
    event,
    key: { us: instantUs(event.at), id: event.id.toLowerCase() },
    doubtUs: (event.uncertaintyMs ?? 0) * 1000,
  };
}

/** The unvoided events of one type, in order. */
export function liveOf<Type extends WireEvent['type']>(
  history: History,
  type: Type,
): Recorded<EventOf<Type>>[] {
  return history.live.filter((recorded): recorded is Recorded<EventOf<Type>> => recorded.event.type === type);
}

/** What the last `item.received` says of an item, or null when nothing does. */
export function itemFacts(
  history: History,
  item: string,
): { kind: string; part: string | null; lot: string | null } | null {
  const received = liveOf(history, 'item.received').findLast(({ event }) => event.body.item === item);
  if (received === undefined) return null;
  const { kind, part, lot } = received.event.body;
  return { kind, part: part ?? null, lot: lot ?? null };
}

/** The product and revision that the unit's last `unit.started` names, or nulls. */
export function productOf(
  history: History,
  unit: string,
): { product: string | null; revision: string | null } {
  const started = liveOf(history, 'unit.started').findLast(({ event }) => event.body.unit === unit);
  if (started === undefined) return { product: null, revision: null };
  return { product: started.event.body.product, revision: started.event.body.revision };
}

/** What the plant file says of the unit's product revision; undefined when it knows none. */
export function plantProductOf(history: History, unit: string): PlantProduct | undefined {
  const { product, revision } = productOf(history, unit);
  return history.plant.products.find((known) => known.number === product && known.revision === revision);
}
