import { z } from 'zod';
import { findEventsById } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import {
  type HoldFact,
  holdKey,
  loadMountsAt,
  loadMountsBefore,
  type MountFact,
  type RecordCache,
} from '@/lib/data/record/record-cache';
import { innerOf, outerOf, unitFamily } from '@/lib/data/record/unit-family';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot } from '@/lib/domain/events/touched';
import type { HoldTargetKind } from '@/lib/domain/events/vocabulary';
import type { ContainerFacts, ItemFacts, Known, OpenHold } from '@/lib/domain/gate/known';
import { foldContainer } from '@/lib/domain/packing/fold-container';
import type { Plant } from '@/lib/domain/plant/plant';
import { compareKeys, formatInstant } from '@/lib/domain/time';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import type { UnitState } from '@/lib/domain/units/unit-state';

/** How holds are weighed: under `record` the server's own holds would only repeat the flag that placed them. */
export type JudgeMode = 'enforce' | 'record';

/**
 * The record as it stood at the moment of an event, as the gate asks for it: units without the event and what comes
 * after it, slots and joinings at its time, holds open then or, when a person placed them, now.
 */
export async function assembleKnown(options: {
  db: Queryable;
  cache: RecordCache;
  plant: Plant;
  event: LoggedEvent;
  mode: JudgeMode;
}): Promise<Known> {
  const { db, cache, plant, event, mode } = options;
  const containers = await containersOf(cache, event);
  const contents = await contentsByContainer(db, event);
  const mentioned = [...mentionedUnits(event), ...contents.units];
  await cache.units.require(mentioned);
  const family = await unitFamily(cache, event, mentioned);
  await cache.units.require(family);
  if (event.type === 'unit.started' && cache.units.get(event.body.unit) !== null)
    await cache.histories.require([event.body.unit]);
  const states = await statesBefore(options, [...new Set([...mentioned, ...family])]);
  for (const state of states.values())
    if (state?.placing === 'container' && state.container !== null)
      await followContainer(cache, event, containers, state.container);

  const station = event.type === 'unit.processed' || changesSlot(event) ? event.station : undefined;
  const mounts = station === undefined ? [] : await mountsAt(options, station);
  const items = await itemsBefore(options, [
    ...mentionedItems(event),
    ...mounts.flatMap(({ item, grey }) => (grey === null ? [item] : [item, grey.item])),
  ]);
  const lots = [...items.values()].flatMap((item) => item?.lot ?? []);
  await cache.holds.require([
    ...[...states.keys()].map((unit) => holdKey('unit', unit)),
    ...[...items.keys()].map((item) => holdKey('item', item)),
    ...[...lots, ...mentionedLots(event)].map((lot) => holdKey('lot', lot)),
    ...[...mentionedContainers(event), ...containers.keys(), ...contents.containers].map((container) =>
      holdKey('container', container),
    ),
  ]);

  const slots = new Map(mounts.map((mount) => [mount.slot, mount.item]));
  const grey = new Map(
    mounts.flatMap((mount) =>
      mount.grey !== null && event.atUs < mount.grey.untilUs ? [[mount.slot, mount.grey.item]] : [],
    ),
  );
  // A person's hold stops what comes while it is open, whenever that happened. The server's own stops what happened
  // since: what happened before may be just the missing event that puts it right.
  const isOpenAt = (hold: HoldFact) =>
    (hold.placedUs <= event.atUs && event.atUs < hold.releasedUs) ||
    (mode === 'enforce' && !hold.isAutomatic && hold.releasedUs === Number.POSITIVE_INFINITY);
  return {
    plant,
    unit: (unit) => states.get(unit) ?? null,
    isStartedEver: (unit) => isStartedByAnother(cache, event, unit),
    item: (item) => items.get(item) ?? null,
    container: (container) => containers.get(container) ?? null,
    slotContents: () => slots,
    greyContents: () => grey,
    holdsOn: (kind: HoldTargetKind, id: string): OpenHold[] =>
      cache.holds
        .get(holdKey(kind, id))
        .filter(
          (hold) => isOpenAt(hold) && hold.hold !== event.id && !(mode === 'record' && hold.isAutomatic),
        )
        .map(({ hold, reason }) => ({ hold, kind, id, reason })),
    innerUnits: (unit) => innerOf(cache, event, unit),
    outerUnit: (unit) => outerOf(cache, event, unit),
    contentsOf: () => contents,
    ...(await namedEvents(db, event)),
  };
}

function mentionedUnits({ type, body }: LoggedEvent): string[] {
  switch (type) {
    case 'unit.joined':
      return [body.unit, body.into];
    case 'unit.separated':
      return [body.unit, body.from];
    case 'part.installed':
      return body.fromUnit === undefined ? [body.unit] : [body.unit, body.fromUnit];
    case 'hold.placed':
      return body.target.kind === 'unit' ? [body.target.id] : [];
    default:
      return 'unit' in body ? [body.unit] : [];
  }
}

function mentionedItems(event: LoggedEvent): string[] {
  const { type, body } = event;
  if (type === 'unit.processed') return (body.used ?? []).map((used) => used.item);
  if (type === 'unit.started') return body.boardLot === undefined ? [] : [body.boardLot];
  if (type === 'hold.placed') return body.target.kind === 'item' ? [body.target.id] : [];
  if (type === 'item.spliced') return [body.from, body.to];
  return 'item' in body && body.item !== undefined ? [body.item] : [];
}

function mentionedLots({ type, body }: LoggedEvent): string[] {
  return type === 'unit.started' && body.boardLot !== undefined ? [body.boardLot] : [];
}

function mentionedContainers({ type, body }: LoggedEvent): string[] {
  switch (type) {
    case 'container.nested':
      return [body.container, body.into];
    case 'container.unnested':
      return [body.container, body.from];
    case 'hold.placed':
      return body.target.kind === 'container' ? [body.target.id] : [];
    default:
      return 'container' in body ? [body.container] : [];
  }
}

/** Under `record` the event is in its unit's state when it is judged, so its own start does not count. */
function isStartedByAnother(cache: RecordCache, event: LoggedEvent, unit: string): boolean {
  const starts = cache.histories
    .get(unit)
    .filter((each) => each.type === 'unit.started' && each.id !== event.id);
  return starts.length > 0;
}

async function statesBefore(
  options: { cache: RecordCache; plant: Plant; event: LoggedEvent },
  units: string[],
): Promise<Map<string, UnitState | null>> {
  const { cache, plant, event } = options;
  const states = new Map<string, UnitState | null>();
  for (const unit of units) {
    const entry = cache.units.get(unit);
    const isLate = entry?.last !== null && entry !== null && compareKeys(entry.last, event) >= 0;
    if (!isLate) {
      states.set(unit, entry?.state ?? null);
      continue;
    }
    await cache.histories.require([unit]);
    const before = cache.histories.get(unit).filter((each) => compareKeys(each, event) < 0);
    states.set(unit, foldUnit(unit, before, plant));
  }
  return states;
}

/**
 * Items as an event meets them: one that was retired later was still in use, and a receipt does not meet itself, which
 * under `record` is in the record when it is judged.
 */
async function itemsBefore(
  { cache, event }: { cache: RecordCache; event: LoggedEvent },
  items: string[],
): Promise<Map<string, ItemFacts | null>> {
  await cache.items.require(items);
  const found = new Map(items.map((item) => [item, cache.items.get(item)]));
  for (const [item, facts] of found) {
    const isOwnReceipt = event.type === 'item.received' && event.gate === 'record';
    if (facts === null || !(facts.isRetired || isOwnReceipt)) continue;
    await cache.itemHistories.require([item]);
    const others = cache.itemHistories.get(item).filter(({ id }) => id !== event.id);
    const isKnown = others.some(({ type }) => type === 'item.received');
    const isRetired = others.some((each) => each.type === 'item.retired' && compareKeys(each, event) < 0);
    found.set(item, isKnown ? { ...facts, isRetired } : null);
  }
  return found;
}

async function mountsAt(
  options: { db: Queryable; cache: RecordCache; event: LoggedEvent },
  station: string,
): Promise<MountFact[]> {
  const { db, cache, event } = options;
  await cache.slots.require([station]);
  const { open, changedUs } = cache.slots.get(station);
  if (event.type === 'item.unmounted' || event.type === 'item.spliced')
    return loadMountsBefore(db, station, event);
  return event.atUs >= changedUs ? open : loadMountsAt(db, station, formatInstant(event.atUs));
}

async function containersOf(cache: RecordCache, event: LoggedEvent): Promise<Map<string, ContainerFacts>> {
  const found = new Map<string, ContainerFacts>();
  for (const name of mentionedContainers(event)) await followContainer(cache, event, found, name);
  return found;
}

/** Notes a container and those around it as they stood at the event; the nearest shipment counts. */
async function followContainer(
  cache: RecordCache,
  event: LoggedEvent,
  found: Map<string, ContainerFacts>,
  name: string,
): Promise<ContainerFacts | null> {
  const noted = found.get(name);
  if (noted !== undefined) return noted;
  await cache.containers.require([name]);
  const history = cache.containers.get(name);
  if (history === null) return null;
  const { inside, shipping } = foldContainer(history.filter((each) => compareKeys(each, event) < 0));
  const facts: ContainerFacts = { container: name, inside, shipment: shipping?.shipment ?? null };
  found.set(name, facts);
  if (inside === null) return facts;
  const around = await followContainer(cache, event, found, inside);
  facts.shipment ??= around?.shipment ?? null;
  return facts;
}

const contentRow = z.object({ units: z.array(z.string()), containers: z.array(z.string()) });

async function contentsByContainer(
  db: Queryable,
  event: LoggedEvent,
): Promise<{ units: string[]; containers: string[] }> {
  if (event.type !== 'container.shipped' && event.type !== 'container.nested')
    return { units: [], containers: [] };
  const { rows } = await db.query(
    `with recursive down as (
       select container from read.container where container = $1
       union
       select c.container from down d join read.container c on c.inside = d.container
     )
     select coalesce(array_agg(d.container) filter (where d.container <> $1), '{}') as containers,
       array(select u.unit from down d2 join read.unit u on u.container = d2.container and u.place = 'container'
             order by u.unit) as units
     from down d`,
    [event.body.container],
  );
  return contentRow.parse(rows[0]);
}

const holdStateRow = z.object({ released_by: z.string().nullable() });

const exceptionRow = z.object({ is_flagged: z.boolean(), clearing: z.string().nullable() });

type Named = Pick<Known, 'hold' | 'eventType' | 'isLabelled' | 'exception'>;

async function namedEvents(db: Queryable, event: LoggedEvent): Promise<Named> {
  const nothing: Named = {
    hold: () => null,
    eventType: () => null,
    isLabelled: () => false,
    exception: () => null,
  };
  if (event.type === 'label.printed') {
    const { kind, id } = event.body.target;
    const { rowCount } = await db.query(
      `select from read.label_print
       where kind = $1 and code = $2 and (at, event) < ($3::timestamptz, $4::uuid) limit 1`,
      [kind, id, formatInstant(event.atUs), event.id],
    );
    return { ...nothing, isLabelled: () => rowCount !== 0 };
  }
  if (event.type === 'hold.released') {
    const { rows } = await db.query('select released_by from read.hold where hold = $1', [event.body.hold]);
    const state = rows.map((row) => {
      const { released_by: by } = holdStateRow.parse(row);
      return { isReleased: by !== null && by !== event.id };
    });
    return { ...nothing, hold: () => state[0] ?? null };
  }
  if (event.type === 'exception.cleared') {
    const { rows } = await db.query(
      `select exists (select from read.flagged f where f.event = $1) as is_flagged,
         (select c.clearing from read.clearing_of($1) c) as clearing`,
      [event.body.event],
    );
    const { is_flagged: isFlagged, clearing } = exceptionRow.parse(rows[0]);
    const isCleared = clearing !== null && clearing !== event.id;
    return { ...nothing, exception: () => (isFlagged ? { isCleared } : null) };
  }
  if (event.type === 'event.voided') {
    const [named] = await findEventsById(db, [event.body.event]);
    return { ...nothing, eventType: () => named?.type ?? null };
  }
  return nothing;
}
