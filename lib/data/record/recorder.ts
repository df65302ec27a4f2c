import { findEventsById } from '@/lib/data/log/find-events';
import { type Arriving, insertEvents } from '@/lib/data/log/insert-events';
import type { KeptRecord } from '@/lib/data/record/kept-record';
import { deleteOwnRows, insertOwnRows } from '@/lib/data/record/own-rows';
import { holdKey, itemFacts, type RecordCache } from '@/lib/data/record/record-cache';
import { ensureContainers } from '@/lib/data/record/refresh-container';
import { noteArrivals } from '@/lib/data/record/refresh-devices';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { type ItemRow, itemRow, writeItems } from '@/lib/data/record/refresh-item';
import { refreshSlot } from '@/lib/data/record/refresh-slot';
import { refreshTouched } from '@/lib/data/record/refresh-touched';
import { type UnitEntry, writeUnits } from '@/lib/data/record/unit-rows';
import { WritesTogether } from '@/lib/data/record/writes-together';
import type { Writing } from '@/lib/data/transaction';
import type { EventOf } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import type { Plant } from '@/lib/domain/plant/plant';
import { compareKeys } from '@/lib/domain/time';
import { extendUnit } from '@/lib/domain/units/fold-unit';
import { UNSEEN_UNIT } from '@/lib/domain/units/unit-state';

// Events whose only effect, when they come in order, is on their own rows and on their unit's or item's state.
const EXTENDING: readonly LoggedEvent['type'][] = [
  'unit.processed',
  'unit.signed',
  'unit.scrapped',
  'unit.packed',
  'unit.unpacked',
  'unit.returned',
  'part.removed',
  'part.installed',
  'item.received',
  'item.counted',
  'item.inspected',
  'item.retired',
  'item.mounted',
  'item.unmounted',
];

type SlotChange = LoggedEvent & EventOf<'item.mounted' | 'item.unmounted'>;

/** What is not written yet; made anew with every flush. */
function nothing() {
  return {
    events: [] as Arriving[],
    ownRows: [] as LoggedEvent[],
    units: new Map<string, UnitEntry>(),
    items: new Map<string, ItemRow>(),
    containers: new Set<string>(),
    slotChanges: [] as SlotChange[],
  };
}

/**
 * Puts events into the log and the read tables. An event that comes in order extends the state of its unit, item or
 * slot in memory and is written with its batch; any other one makes what it touches again from the log. Both give the
 * same tables. Who reads must flush before.
 */
export class Recorder {
  readonly #db: Pick<Writing, 'query' | 'defer'>;
  readonly #kept: KeptRecord;
  readonly #recordedAtUs: number;
  #unwritten = nothing();

  /** `recordedAtUs` is when the events come (microseconds). */
  constructor(options: {
    db: Pick<Writing, 'query' | 'defer'>;
    kept: KeptRecord;
    recordedAtUs: number;
  }) {
    this.#db = options.db;
    this.#kept = options.kept;
    this.#recordedAtUs = options.recordedAtUs;
  }

  get #plant(): Plant {
    return this.#kept.plant;
  }

  get #cache(): RecordCache {
    return this.#kept.cache;
  }

  /** Records one event; `isVoided` when a void named it before it came: it keeps its place and has no effect. */
  async record(arriving: Arriving, options: { isVoided: boolean }): Promise<void> {
    const { event } = arriving;
    const counts = !options.isVoided && event.type !== 'event.voided';
    // What it extends is read before it is there itself.
    const extend = counts ? await this.#extension(event) : null;
    this.#unwritten.events.push(arriving);
    if (counts) this.#unwritten.ownRows.push(event);
    if (!options.isVoided && event.type === 'event.voided') await this.#void(event);
    if (!counts) return;
    if (extend !== null) return extend();
    this.flush();
    await refreshTouched(this.#db, event, this.#plant);
    this.#forget(event);
  }

  /** Sends events and the rows that they own; states may follow later. */
  sendEvents(): void {
    const together = new WritesTogether();
    this.#writeEvents(together);
    this.#db.defer(together.send(this.#db));
  }

  /** Sends what is still in memory; what is asked for after it finds it written. */
  flush(): void {
    const { events, units, items, containers, slotChanges } = this.#unwritten;
    if (events.length + units.size + items.size + slotChanges.length === 0) return;
    const together = new WritesTogether();
    this.#writeEvents(together);
    void writeUnits(together, units, this.#plant);
    void writeItems(together, [...items.values()]);
    if (containers.size > 0) void ensureContainers(together, [...containers]);
    this.#unwritten = nothing();
    const { defer } = this.#db;
    defer(together.send(this.#db));
    for (const event of slotChanges) defer(refreshSlot(this.#db, event));
  }

  #writeEvents(together: WritesTogether): void {
    const { events, ownRows } = this.#unwritten;
    [this.#unwritten.events, this.#unwritten.ownRows] = [[], []];
    const arrived = events.map(({ event }) => event);
    void insertEvents(together, events, this.#recordedAtUs);
    void noteArrivals(together, arrived, this.#recordedAtUs);
    void insertOwnRows(together, ownRows);
  }

  /** What an event that comes in order changes in memory; null for one that makes things again from the log. */
  async #extension(event: LoggedEvent): Promise<(() => void) | null> {
    if (event.type === 'unit.started') await this.#cache.units.require([event.body.unit]);
    else if (!EXTENDING.includes(event.type)) return null;
    if (event.type === 'item.mounted' || event.type === 'item.unmounted') return this.#slotExtension(event);
    return 'unit' in event.body
      ? this.#unitExtension(event, event.body.unit)
      : this.#itemExtension(event, touchedBy(event).items[0] ?? '');
  }

  async #unitExtension(event: LoggedEvent, unit: string): Promise<(() => void) | null> {
    const { mentioned } = touchedBy(event);
    await Promise.all([this.#cache.units.require([unit]), this.#cache.containers.require(mentioned)]);
    const entry = this.#cache.units.get(unit);
    if (event.type === 'unit.started' && entry !== null) return null;
    if (entry !== null && entry.last !== null && compareKeys(entry.last, event) >= 0) return null;
    const before = entry?.state ?? UNSEEN_UNIT;
    const state = extendUnit(unit, before, event, this.#plant);
    if (state.exhausted.length !== before.exhausted.length) return null;
    const extended = { state, last: { atUs: event.atUs, id: event.id } };
    return () => {
      this.#cache.units.set(unit, extended);
      this.#cache.histories.forget(unit);
      this.#unwritten.units.set(unit, extended);
      for (const container of mentioned) {
        this.#unwritten.containers.add(container);
        if (this.#cache.containers.get(container) === null) this.#cache.containers.set(container, []);
      }
    };
  }

  async #itemExtension(event: LoggedEvent, item: string): Promise<(() => void) | null> {
    await this.#cache.itemHistories.require([item]);
    const history = this.#cache.itemHistories.get(item);
    const last = history.at(-1);
    if (last !== undefined && compareKeys(last, event) >= 0) return null;
    const extended = [...history, event];
    const row = itemRow(item, extended);
    return () => {
      this.#cache.itemHistories.set(item, extended);
      this.#cache.items.set(item, row === null ? null : itemFacts(row));
      if (row !== null) this.#unwritten.items.set(item, row);
    };
  }

  /** A mount or unmount after everything else at its station ends what stood in its slot. */
  async #slotExtension(event: SlotChange): Promise<(() => void) | null> {
    const { station, atUs: fromUs, body } = event;
    await this.#cache.slots.require([station]);
    const { open, changedUs } = this.#cache.slots.get(station);
    if (fromUs <= changedUs) return null;
    const { slot } = body;
    const others = open.filter((mount) => mount.slot !== slot);
    const standing = open.filter((mount) => mount.slot === slot);
    if (event.type === 'item.mounted')
      others.push({ slot, item: event.body.item, fromUs, toUs: Number.POSITIVE_INFINITY, grey: null });
    else others.push(...standing.filter(({ item }) => item !== event.body.item));
    return () => {
      this.#cache.slots.set(station, { open: others, changedUs: fromUs });
      this.#unwritten.slotChanges.push(event);
    };
  }

  async #void(event: LoggedEvent & EventOf<'event.voided'>): Promise<void> {
    this.flush();
    const { rowCount } = await this.#db.query('select from read.voided where event = $1', [event.body.event]);
    const isFirst = rowCount === 0;
    const [target] = await findEventsById(this.#db, [event.body.event]);
    if (target?.type === 'event.voided') return;
    await this.#db.query('insert into read.voided (event, void) values ($1, $2)', [
      event.body.event,
      event.id,
    ]);
    if (target === undefined || !isFirst) return;
    await deleteOwnRows(this.#db, target);
    await this.#db.query('delete from read.flagged where event = $1', [target.id]);
    await refreshTouched(this.#db, target, this.#plant);
    // A voided event holds nothing any more: neither as a placed hold nor as a flagged event.
    await refreshHolds(this.#db, [target.id]);
    this.#cache.clear();
  }

  #forget(event: LoggedEvent): void {
    const { units, items, containers, mentioned, holds, joining } = touchedBy(event);
    for (const unit of units) {
      this.#cache.units.forget(unit);
      this.#cache.histories.forget(unit);
      this.#cache.holds.forget(holdKey('unit', unit));
    }
    for (const item of items) {
      this.#cache.items.forget(item);
      this.#cache.itemHistories.forget(item);
    }
    if (holds.length > 0) this.#cache.holds.clear();
    for (const container of [...containers, ...mentioned]) this.#cache.containers.forget(container);
    if (joining !== null) {
      this.#cache.joiningsOfInner.forget(joining.inner);
      this.#cache.joiningsOfOuter.forget(joining.outer);
    }
    if (changesSlot(event)) this.#cache.slots.forget(event.station);
  }
}
