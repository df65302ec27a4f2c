import { findBalanceWindows } from '@/lib/data/balance/find-balance-windows';
import { findGapWindows } from '@/lib/data/balance/find-gap-windows';
import { findUnitHistory } from '@/lib/data/log/find-events';
import { admitAsBuilt } from '@/lib/data/moment/admit-as-built';
import { onMoment } from '@/lib/data/moment/on-moment';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findContainersAround } from '@/lib/data/trace/find-containers-around';
import { findHolds, type Hold } from '@/lib/data/trace/find-holds';
import { findItemFacts, type ItemFacts } from '@/lib/data/trace/find-item-facts';
import { findJoinings, type Joining } from '@/lib/data/trace/find-joinings';
import { findOverlaps } from '@/lib/data/trace/find-overlaps';
import { findUnitEvents, type UnitEvent } from '@/lib/data/trace/find-unit-events';
import { onSnapshot } from '@/lib/data/transaction';
import { applyWindows } from '@/lib/domain/balance/apply-windows';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import type { Completeness, Place } from '@/lib/domain/genealogy/answer';
import { directDrawsOf } from '@/lib/domain/genealogy/draw-rows';
import { drawsOf, type Overlap, type UnitDraw } from '@/lib/domain/genealogy/unit-draws';
import type { Plant } from '@/lib/domain/plant/plant';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import type { UnitState } from '@/lib/domain/units/unit-state';
import { database } from '@/lib/server/database';

/** A stay seen from one end: the other unit. */
export type Stay = Omit<Joining, 'inner' | 'outer'> & { unit: string };

/** An event with what the log knows beside it. */
export type EventRecord = WireEvent & {
  voided: boolean;
  voidedBy: string | null;
  recordedAt: string;
  recordedBy: string;
  flags: unknown[];
};

/** Everything that went into a unit and happened to it. */
export type AsBuilt = {
  unit: string;
  product: string | null;
  revision: string | null;
  place: Place;
  draws: UnitDraw[];
  children: Stay[];
  parents: Stay[];
  containers: string[];
  holds: Hold[];
  events: EventRecord[];
};

/** Deepest chain of units, containers or donors that is followed. */
const DEPTH_MAX = 64;

/**
 * A unit's as-built record, or null when no event names it. With `at` (RFC 3339), as the record tells of that moment:
 * only what had happened by then counts, corrections included whenever they were made. With `knownAt`, as it was known
 * then: nothing that arrived later counts.
 */
export function asBuilt(
  unit: string,
  at?: string,
  knownAt?: string,
): Promise<(AsBuilt & Completeness) | null> {
  const { pool } = database();
  if (at === undefined && knownAt === undefined)
    return onSnapshot(pool, (client) => readComplete(client, unit));
  return onMoment(pool, { atUs: usOf(at), knownAtUs: usOf(knownAt) }, async (record) => {
    await admitAsBuilt(record, unit);
    return readComplete(record.db, unit, knownAt);
  });
}

/** The record of a unit, and what is missing in it, as of a time (RFC 3339; now when none is given). */
async function readComplete(
  db: Queryable,
  unit: string,
  asOf?: string,
): Promise<(AsBuilt & Completeness) | null> {
  const [built, completeness] = await Promise.all([
    new AsBuiltReader(db).read(unit),
    findCompleteness(db, asOf),
  ]);
  return built === null ? null : { ...completeness, ...built };
}

function usOf(instant: string | undefined): number {
  return instant === undefined ? Number.POSITIVE_INFINITY : instantOf(instant);
}

/** Reads as-built records of one snapshot, the same histories once for all of them. */
export class AsBuiltReader {
  readonly #db: Queryable;
  readonly #histories = new Map<string, LoggedEvent[]>();

  constructor(db: Queryable) {
    this.#db = db;
  }

  async read(unit: string): Promise<AsBuilt | null> {
    const [named, { plant }, children, parents, holds] = await Promise.all([
      findUnitEvents(this.#db, unit),
      loadPlant(this.#db),
      findJoinings(this.#db, { unit, side: 'outer_unit' }),
      findJoinings(this.#db, { unit, side: 'inner_unit' }),
      findHolds(this.#db, 'unit', unit),
    ]);
    if (named.length === 0) return null;
    const own = named.flatMap(({ event, isVoided }) =>
      subjectUnit(event) === unit && !isVoided ? [event] : [],
    );
    this.#histories.set(unit, own);
    const state = foldUnit(unit, own, plant);
    const { product, revision } = state;
    const [{ place, containers }, draws] = await Promise.all([
      this.#whereIs({ unit, state, parents, plant }),
      this.#draws(unit, plant),
    ]);
    return {
      unit,
      product,
      revision,
      place,
      draws,
      children: children.map(({ inner, outer: _, ...stay }) => ({ unit: inner, ...stay })),
      parents: parents.map(({ outer, inner: _, ...stay }) => ({ unit: outer, ...stay })),
      containers,
      holds,
      events: named.map(toRecord),
    };
  }

  async #history(unit: string): Promise<LoggedEvent[]> {
    const known = this.#histories.get(unit);
    if (known !== undefined) return known;
    const history = await findUnitHistory(this.#db, unit);
    this.#histories.set(unit, history);
    return history;
  }

  async #draws(unit: string, plant: Plant): Promise<UnitDraw[]> {
    let level = [unit];
    const family = new Set(level);
    for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
      const donors: string[] = [];
      for (const each of level) donors.push(...(await this.#history(each)).flatMap(donorOf));
      level = [...new Set(donors)].filter((donor) => !family.has(donor));
      for (const donor of level) family.add(donor);
    }
    const events: LoggedEvent[] = [];
    for (const each of family) events.push(...(await this.#history(each)));
    const recorded = await findOverlaps(this.#db, events);
    const overlaps = await this.#inDoubt(events, recorded.byPass, plant);
    const items = await this.#items(events, overlaps, recorded.items);
    return drawsOf(
      {
        plant,
        history: (each) => this.#histories.get(each) ?? [],
        overlaps: (event) => overlaps.get(event) ?? [],
        item: (item) => items.get(item) ?? null,
      },
      unit,
    );
  }

  /** What stood in the slots, with the times in which the record itself is in doubt. */
  async #inDoubt(
    events: readonly LoggedEvent[],
    recorded: ReadonlyMap<string, Overlap[]>,
    plant: Plant,
  ): Promise<ReadonlyMap<string, Overlap[]>> {
    if (!plant.weighsOrOwes) return recorded;
    const passes = events.filter((event) => event.type === 'unit.processed');
    const items = [...new Set([...recorded.values()].flatMap((each) => each.map(({ item }) => item)))];
    const stations = [...new Set(passes.map(({ station }) => station))];
    const windows = [
      ...(await findBalanceWindows(this.#db, { plant, items })),
      ...(await findGapWindows(this.#db, { plant, stations })),
    ];
    if (windows.length === 0) return recorded;
    return new Map(passes.map((pass) => [pass.id, applyWindows(pass, recorded.get(pass.id) ?? [], windows)]));
  }

  /** What is known of every item that was drawn, most of it with the slots already. */
  async #items(
    events: readonly LoggedEvent[],
    overlaps: ReadonlyMap<string, Overlap[]>,
    known: ReadonlyMap<string, ItemFacts | null>,
  ): Promise<ReadonlyMap<string, ItemFacts | null>> {
    const named = events.flatMap((event) => directDrawsOf(event).map((draw) => draw.item));
    const slotted = [...overlaps.values()].flat().map((overlap) => overlap.item);
    const unknown = new Set([...named, ...slotted].filter((item) => !known.has(item)));
    if (unknown.size === 0) return known;
    return new Map([...known, ...(await findItemFacts(this.#db, [...unknown]))]);
  }

  /** Where a unit was: its outermost unit's place, with the containers around that, innermost first. */
  async #whereIs(of: {
    unit: string;
    state: UnitState;
    parents: readonly Joining[];
    plant: Plant;
  }): Promise<{ place: Place; containers: string[] }> {
    const outermost = await this.#outermost(of.unit, of.parents);
    const state =
      outermost === of.unit ? of.state : foldUnit(outermost, await this.#history(outermost), of.plant);
    if (state.isScrapped) return { place: { kind: 'scrapped' }, containers: [] };
    switch (state.placing) {
      case null:
        return { place: null, containers: [] };
      case 'station':
        return { place: { kind: 'station', station: state.lastStation }, containers: [] };
      case 'container':
        return this.#inContainer(state.container ?? '');
      default:
        return { place: { kind: state.placing }, containers: [] };
    }
  }

  async #outermost(unit: string, parents: readonly Joining[]): Promise<string> {
    const seen = new Set([unit]);
    let outermost = unit;
    let stays = parents;
    for (let depth = 0; depth < DEPTH_MAX; depth += 1) {
      const open = stays.findLast((joining) => joining.until === null);
      if (open === undefined || seen.has(open.outer)) return outermost;
      seen.add(open.outer);
      outermost = open.outer;
      stays = await findJoinings(this.#db, { unit: outermost, side: 'inner_unit' });
    }
    return outermost;
  }

  async #inContainer(container: string): Promise<{ place: Place; containers: string[] }> {
    const around = await findContainersAround(this.#db, container);
    const shipped = around.find(({ shipment }) => shipment !== null);
    const containers = around.map((each) => each.container);
    if (shipped === undefined) return { place: { kind: 'container', container }, containers };
    const { shipment, customer } = shipped;
    return {
      place: { kind: 'shipped', container, shipment: shipment ?? '', customer: customer ?? '' },
      containers,
    };
  }
}

function donorOf(event: LoggedEvent): string[] {
  return event.type === 'part.installed' && event.body.fromUnit !== undefined ? [event.body.fromUnit] : [];
}

function toRecord({ event, isVoided, voidedBy, recordedAtUs, recordedBy, flags }: UnitEvent): EventRecord {
  const { atUs: _, ...sent } = event;
  return { ...sent, voided: isVoided, voidedBy, recordedAt: formatInstant(recordedAtUs), recordedBy, flags };
}
