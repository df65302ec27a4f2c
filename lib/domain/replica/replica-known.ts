import type { WireEvent } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';
import type { Known, OpenHold } from '@/lib/domain/gate/known';
import type { Plant } from '@/lib/domain/plant/plant';
import type { ReplicaAnswer, ReplicaUnit } from '@/lib/domain/replica/replica-answer';
import { extendUnit } from '@/lib/domain/units/fold-unit';
import { UNSEEN_UNIT, type UnitState } from '@/lib/domain/units/unit-state';

/** What a tablet keeps of the record, with the units that a question is about already looked up. */
export type Replica = { plant: Plant; items: ReplicaAnswer['items'] };

/**
 * The record as a tablet knows it without the server: the unit as it was when the server was last heard, and then what
 * this device itself has recorded since. What a tablet does not keep is unknown here; the gate's answer is provisional.
 */
export function replicaKnown(
  { plant, items }: Replica,
  asked: { unit: string; kept: ReplicaUnit | null; outer: ReplicaUnit | null; own: readonly WireEvent[] },
): Known {
  const states = new Map<string, UnitState>();
  for (const each of [asked.outer, asked.kept]) if (each !== null) states.set(each.unit, each.state);
  const state = withOwn(asked, plant);
  if (state !== null) states.set(asked.unit, state);
  const slots = new Map(items.map(({ slot, item }) => [slot, item]));
  const byItem = new Map(items.map((row) => [row.item, row]));
  const kept = [asked.kept, asked.outer].flatMap((each) => each ?? []);
  return {
    plant,
    unit: (unit) => states.get(unit) ?? null,
    isStartedEver: (unit) => states.get(unit)?.isStarted ?? false,
    item: (item) => {
      const row = byItem.get(item);
      if (row === undefined || row.kind === null) return null;
      return { item, kind: row.kind, part: row.part, lot: row.lot, isRetired: row.isRetired };
    },
    container: (container) => {
      const inside = kept.find((each) => each.state.container === container);
      return inside === undefined ? null : { container, inside: null, shipment: inside.shipment };
    },
    slotContents: () => slots,
    // What was spliced away lately is not kept here; the server looks at it when the event comes.
    greyContents: () => new Map(),
    holdsOn: (kind, id): OpenHold[] =>
      kind === 'unit'
        ? (kept.find((each) => each.unit === id)?.holds ?? []).map((hold) => ({ ...hold, kind, id }))
        : items
            .flatMap(({ holds }) => holds)
            .filter((hold, index, all) => {
              const isSame = hold.kind === kind && hold.id === id;
              return isSame && all.findIndex((other) => other.hold === hold.hold) === index;
            }),
    innerUnits: () => [],
    outerUnit: (unit) => (unit === asked.unit ? (asked.kept?.outer ?? null) : null),
    contentsOf: () => ({ units: [], containers: [] }),
    hold: () => null,
    exception: () => null,
    isLabelled: () => false,
    eventType: () => null,
  };
}

/** The unit's state after what this device has recorded of it and the server has not acknowledged yet. */
function withOwn(
  { unit, kept, own }: { unit: string; kept: ReplicaUnit | null; own: readonly WireEvent[] },
  plant: Plant,
): UnitState | null {
  const mine = own.filter((event) => 'unit' in event.body && event.body.unit === unit).map(toLogged);
  if (kept === null && mine.length === 0) return null;
  return mine
    .filter(({ atUs }) => kept?.lastAtUs == null || atUs > kept.lastAtUs)
    .reduce((state, event) => extendUnit(unit, state, event, plant), kept?.state ?? UNSEEN_UNIT);
}
