import type { WireEvent } from '@/lib/domain/events/catalogue';
import { type LoggedEvent, subjectUnit, toLogged } from '@/lib/domain/events/logged-event';
import type { HoldTargetKind } from '@/lib/domain/events/vocabulary';
import { judge } from '@/lib/domain/gate/judge';
import type { ContainerFacts, ItemFacts, Known, OpenHold } from '@/lib/domain/gate/known';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { Plant } from '@/lib/domain/plant/plant';
import { extendUnit, foldUnit } from '@/lib/domain/units/fold-unit';
import { UNSEEN_UNIT, type UnitState } from '@/lib/domain/units/unit-state';

type Hold = OpenHold & { isAutomatic: boolean; isReleased: boolean };
type Container = { inside: string | null; shipment: string | null; units: Set<string> };

/** The record of events that come in order of time, held in memory: enough to judge the next one with the real gate. */
export class InMemoryRecord {
  readonly #plant: Plant;
  readonly #events = new Map<string, LoggedEvent>();
  readonly #voided = new Set<string>();
  readonly #histories = new Map<string, LoggedEvent[]>();
  readonly #states = new Map<string, UnitState>();
  readonly #items = new Map<string, ItemFacts>();
  readonly #slots = new Map<string, Map<string, string>>();
  readonly #containers = new Map<string, Container>();
  readonly #outer = new Map<string, string>();
  readonly #inner = new Map<string, Set<string>>();
  /** Events recorded against a rule, and whether that was cleared. */
  readonly #flagged = new Map<string, boolean>();
  readonly #holds = new Map<string, Hold>();
  readonly #holdsByTarget = new Map<string, Hold[]>();

  constructor(plant: Plant) {
    this.#plant = plant;
  }

  /** Units with their folded state. */
  get units(): ReadonlyMap<string, UnitState> {
    return this.#states;
  }

  /** Holds that were placed and not released, automatic ones included. */
  get openHolds(): OpenHold[] {
    return [...this.#holds.values()].filter((hold) => !hold.isReleased);
  }

  /** Judges an event and records it unless it is refused; returns what it breaks. */
  append(wire: WireEvent): Refusal[] {
    const event = toLogged(wire);
    const isRecordOnly = event.gate === 'record';
    const reasons = judge(event, this.#known(isRecordOnly));
    if (reasons.length > 0 && !isRecordOnly) return reasons;
    this.#events.set(event.id, event);
    this.#apply(event);
    if (reasons.length > 0) this.#flagged.set(event.id, false);
    const unit = subjectUnit(event);
    if (reasons.length > 0 && unit !== null)
      this.#hold({
        hold: event.id,
        kind: 'unit',
        id: unit,
        reason: 'flagged',
        isAutomatic: true,
        isReleased: false,
      });
    return reasons;
  }

  /** Shipment of the container around a unit, or null. */
  shipmentOf(unit: string): string | null {
    const state = this.#states.get(unit);
    if (state?.placing !== 'container' || state.container === null) return null;
    return this.#containerFacts(state.container)?.shipment ?? null;
  }

  #known(isRecordOnly: boolean): Known {
    return {
      plant: this.#plant,
      unit: (unit) => this.#states.get(unit) ?? null,
      isStartedEver: (unit) => this.#states.get(unit)?.isStarted ?? false,
      item: (item) => this.#items.get(item) ?? null,
      container: (container) => this.#containerFacts(container),
      slotContents: (station) => this.#slots.get(station) ?? new Map<string, string>(),
      greyContents: () => new Map(),
      holdsOn: (kind, id) =>
        (this.#holdsByTarget.get(`${kind} ${id}`) ?? []).filter(
          (hold) => !hold.isReleased && !(isRecordOnly && hold.isAutomatic),
        ),
      innerUnits: (unit) => this.#innerUnits(unit),
      outerUnit: (unit) => this.#outer.get(unit) ?? null,
      contentsOf: (container) => this.#contentsOf(container),
      hold: (hold) => this.#holds.get(hold) ?? null,
      exception: (id) => {
        const isCleared = this.#flagged.get(id);
        return isCleared === undefined ? null : { isCleared };
      },
      isLabelled: (kind, id) =>
        [...this.#events.values()].some(
          ({ type, body }) => type === 'label.printed' && body.target.kind === kind && body.target.id === id,
        ),
      eventType: (id) => this.#events.get(id)?.type ?? null,
    };
  }

  #apply(event: LoggedEvent): void {
    const unit = subjectUnit(event);
    if (unit !== null) this.#extend(unit, event);
    switch (event.type) {
      case 'unit.joined':
        this.#outer.set(event.body.unit, event.body.into);
        this.#inner.set(event.body.into, this.#innerSet(event.body.into).add(event.body.unit));
        break;
      case 'unit.separated':
        this.#outer.delete(event.body.unit);
        this.#innerSet(event.body.from).delete(event.body.unit);
        break;
      case 'unit.packed':
        this.#container(event.body.container).units.add(event.body.unit);
        break;
      case 'unit.unpacked':
        this.#container(event.body.container).units.delete(event.body.unit);
        break;
      case 'container.nested':
        this.#container(event.body.into);
        this.#container(event.body.container).inside = event.body.into;
        break;
      case 'container.unnested':
        this.#container(event.body.container).inside = null;
        break;
      case 'container.shipped':
        this.#container(event.body.container).shipment = event.body.shipment;
        break;
      case 'item.received': {
        const { item, kind, part = null, lot = null } = event.body;
        this.#items.set(item, { item, kind, part, lot, isRetired: false });
        break;
      }
      case 'item.retired': {
        const facts = this.#items.get(event.body.item);
        if (facts !== undefined) this.#items.set(facts.item, { ...facts, isRetired: true });
        break;
      }
      case 'item.mounted':
        this.#slotsOf(event.station).set(event.body.slot, event.body.item);
        break;
      case 'item.spliced':
        this.#slotsOf(event.station).set(event.body.slot, event.body.to);
        break;
      case 'item.unmounted':
        this.#slotsOf(event.station).delete(event.body.slot);
        break;
      case 'hold.placed': {
        const { target, reason } = event.body;
        this.#hold({ ...target, hold: event.id, reason, isAutomatic: false, isReleased: false });
        break;
      }
      case 'hold.released': {
        const hold = this.#holds.get(event.body.hold);
        if (hold !== undefined) hold.isReleased = true;
        break;
      }
      case 'exception.cleared': {
        this.#flagged.set(event.body.event, true);
        const hold = this.#holds.get(event.body.event);
        if (hold !== undefined) hold.isReleased = true;
        break;
      }
      case 'event.voided':
        this.#void(event.body.event);
        break;
      default:
    }
  }

  #extend(unit: string, event: LoggedEvent): void {
    const before = this.#states.get(unit) ?? UNSEEN_UNIT;
    const state = extendUnit(unit, before, event, this.#plant);
    this.#states.set(unit, state);
    const history = this.#histories.get(unit);
    if (history === undefined) this.#histories.set(unit, [event]);
    else history.push(event);
    if (state.exhausted.length > before.exhausted.length)
      this.#hold({
        hold: event.id,
        kind: 'unit',
        id: unit,
        reason: 'attempts_exhausted',
        isAutomatic: true,
        isReleased: false,
      });
  }

  #void(id: string): void {
    this.#voided.add(id);
    const target = this.#events.get(id);
    const unit = target === undefined ? null : subjectUnit(target);
    if (unit === null) return;
    const history = (this.#histories.get(unit) ?? []).filter((event) => !this.#voided.has(event.id));
    this.#histories.set(unit, history);
    this.#states.set(unit, foldUnit(unit, history, this.#plant));
  }

  #hold(hold: Hold): void {
    this.#holds.set(hold.hold, hold);
    const key = `${hold.kind satisfies HoldTargetKind} ${hold.id}`;
    this.#holdsByTarget.set(key, [...(this.#holdsByTarget.get(key) ?? []), hold]);
  }

  #containerFacts(name: string): ContainerFacts | null {
    const container = this.#containers.get(name);
    if (container === undefined) return null;
    const around = container.inside === null ? null : this.#containerFacts(container.inside);
    return {
      container: name,
      inside: container.inside,
      shipment: container.shipment ?? around?.shipment ?? null,
    };
  }

  #container(name: string): Container {
    const known = this.#containers.get(name);
    if (known !== undefined) return known;
    const container: Container = { inside: null, shipment: null, units: new Set() };
    this.#containers.set(name, container);
    return container;
  }

  #contentsOf(name: string): { units: string[]; containers: string[] } {
    const containers = [...this.#containers]
      .filter(([, { inside }]) => inside === name)
      .map(([inner]) => inner);
    const units = [name, ...containers].flatMap((each) => [...(this.#containers.get(each)?.units ?? [])]);
    return { units, containers };
  }

  #innerUnits(unit: string): string[] {
    return [...this.#innerSet(unit)].flatMap((inner) => [inner, ...this.#innerUnits(inner)]);
  }

  #innerSet(unit: string): Set<string> {
    return this.#inner.get(unit) ?? new Set();
  }

  #slotsOf(station: string): Map<string, string> {
    const slots = this.#slots.get(station) ?? new Map<string, string>();
    this.#slots.set(station, slots);
    return slots;
  }
}
