import { findEventsById } from '@/lib/data/log/find-events';
import { type Arriving, insertEvents } from '@/lib/data/log/insert-events';
import type { KeptRecord } from '@/lib/data/record/kept-record';
import { deleteOwnRows, insertOwnRows } from '@/lib/data/record/own-rows';
import { holdKey, type RecordCache } from '@/lib/data/record/record-cache';
import { ensureContainers } from '@/lib/data/record/refresh-container';
import { noteArrivals } from '@/lib/data/record/refresh-devices';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { refreshTouched } from '@/lib/data/record/refresh-touched';
import { type UnitEntry, writeUnits } from '@/lib/data/record/unit-rows';
import type { Writing } from '@/lib/data/transaction';
import type { EventOf } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import type { Plant } from '@/lib/domain/plant/plant';
import { compareKeys } from '@/lib/domain/time';
import { extendUnit } from '@/lib/domain/units/fold-unit';
import { UNSEEN_UNIT } from '@/lib/domain/units/unit-state';

// Events whose only effect, when they come in order, is on their own rows and on their unit's state.
const EXTENDING: readonly LoggedEvent['type'][] = [
  'unit.processed',
  'unit.signed',
  'unit.scrapped',
  'unit.packed',
  'unit.unpacked',
  'unit.returned',
  'part.removed',
  'part.installed',
];

// Events that are judged on units, whose states and histories are kept in memory, and on what is written at once:
// items, slots, holds, joinings and nested containers.
const JUDGED_FROM_MEMORY: readonly LoggedEvent['type'][] = [
  'unit.started',
  'unit.processed',
  'unit.signed',
  'unit.scrapped',
  'unit.packed',
  'unit.returned',
  'part.removed',
  'part.installed',
];

/**
 * Puts events into the log and the read tables. An event that comes in order extends its unit's state in memory and
 * is written with its batch; any other one makes what it touches again from the log. Both give the same tables.
 */
export class Recorder {
  readonly #db: Pick<Writing, 'query' | 'defer'>;
  readonly #kept: KeptRecord;
  readonly #recordedAtUs: number;
  #events: Arriving[] = [];
  #ownRows: LoggedEvent[] = [];
  #units = new Map<string, UnitEntry>();
  #containers = new Set<string>();

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
    this.#events.push(arriving);
    if (options.isVoided) return;
    if (event.type === 'event.voided') return this.#void(event);
    this.#ownRows.push(event);
    this.#kept.unwritten = this.#ownRows;
    if (await this.#extends(event)) return;
    this.flush();
    await refreshTouched(this.#db, event, this.#plant);
    this.#forget(event);
  }

  /** Sends what is still in memory; what is asked for after it finds it written. */
  flush(): void {
    const [events, ownRows, units, containers] = [this.#events, this.#ownRows, this.#units, this.#containers];
    [this.#events, this.#ownRows, this.#units, this.#containers] = [[], [], new Map(), new Set()];
    this.#kept.unwritten = [];
    if (events.length === 0) return;
    const { defer } = this.#db;
    defer(insertEvents(this.#db, events, this.#recordedAtUs));
    const arrived = events.map(({ event }) => event);
    defer(noteArrivals(this.#db, arrived, this.#recordedAtUs));
    defer(insertOwnRows(this.#db, ownRows));
    defer(writeUnits(this.#db, units, this.#plant));
    if (containers.size > 0) defer(ensureContainers(this.#db, [...containers]));
    // What was looked for since and not found is known from now on.
    for (const container of containers) this.#cache.containers.forget(container);
  }

  /** Writes what is in memory when the judgement of an event must read it back from the tables. */
  flushBefore(event: LoggedEvent): void {
    if (!JUDGED_FROM_MEMORY.includes(event.type)) this.flush();
  }

  async #extends(event: LoggedEvent): Promise<boolean> {
    if (!('unit' in event.body)) return false;
    const { unit } = event.body;
    await this.#cache.units.require([unit]);
    const entry = this.#cache.units.get(unit);
    const isFirstStart = event.type === 'unit.started' && entry === null;
    if (!isFirstStart && !EXTENDING.includes(event.type)) return false;
    if (entry !== null && entry.last !== null && compareKeys(entry.last, event) >= 0) return false;
    const before = entry?.state ?? UNSEEN_UNIT;
    const state = extendUnit(unit, before, event, this.#plant);
    if (state.exhausted.length !== before.exhausted.length) return false;
    const extended = { state, last: { atUs: event.atUs, id: event.id } };
    this.#cache.units.set(unit, extended);
    this.#cache.histories.forget(unit);
    this.#units.set(unit, extended);
    for (const container of touchedBy(event).mentioned) {
      this.#containers.add(container);
      this.#cache.containers.forget(container);
    }
    return true;
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
