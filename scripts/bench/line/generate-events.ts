import type { WireEvent } from '@/lib/domain/events/catalogue';
import * as codes from '@/scripts/bench/line/bench-codes';
import { CABINET, PRODUCT, REEL_SLOTS, STATIONS, TOOL_SLOTS } from '@/scripts/bench/line/bench-plant';
import * as incidents from '@/scripts/bench/line/incidents';

/** When the line began, in milliseconds since the epoch. */
export const BEGIN_MS = Date.UTC(2020, 0, 6);
/** A unit starts with every tick, and is at every other station two ticks later. */
const TICK_MS = 10_000;
const TICKS_PER_STATION = 2;
const WORK_MS = 8_000;

/** An event that still wants its id, which says its place in time. */
type Fact = WireEvent extends infer E
  ? E extends WireEvent
    ? Omit<E, 'id' | 'at'> & { atMs: number }
    : never
  : never;

/** When a unit's work at a station ends, in milliseconds since the epoch. */
export function passedMs(unit: number, stationIndex: number): number {
  return BEGIN_MS + (unit + TICKS_PER_STATION * stationIndex + 1) * TICK_MS + 1_000 + 200 * stationIndex;
}

/** When the work began. */
export function beganMs(unit: number, stationIndex: number): number {
  return passedMs(unit, stationIndex) - WORK_MS;
}

/** When the first reel or tool of a unit goes into its slot: in the gap before the unit, or while it is worked on. */
export function mountedMs(unit: number, stationIndex: number, isDuringWork: boolean): number {
  if (unit === 0) return BEGIN_MS - 60_000;
  return beganMs(unit, stationIndex) + (isDuringWork ? 3_000 : -1_000);
}

/**
 * Everything that happens on the line until so many units have left it, in order of time: the same number gives the
 * same events. Events are as small as the wire allows, so that a large history fits on a disk.
 */
export function* generateEvents(unitCount: number): Generator<WireEvent> {
  const lastTick = unitCount + TICKS_PER_STATION * STATIONS.length + 3;
  let pending = openingFacts();
  let sequence = 0;
  for (let tick = -1; tick <= lastTick; tick += 1) {
    const endMs = BEGIN_MS + (tick + 1) * TICK_MS;
    pending.push(...factsOfTick(tick, unitCount));
    pending.sort((a, b) => a.atMs - b.atMs);
    const due = pending.findIndex(({ atMs }) => atMs >= endMs);
    const now = due === -1 ? pending : pending.slice(0, due);
    pending = due === -1 ? [] : pending.slice(due);
    for (const fact of now) {
      sequence += 1;
      yield toEvent(fact, sequence);
    }
  }
  for (const fact of pending) {
    sequence += 1;
    yield toEvent(fact, sequence);
  }
}

/** Units on the line at once are few, so this sees no more than a minute ahead. */
function factsOfTick(tick: number, unitCount: number): Fact[] {
  const facts: Fact[] = [];
  if (tick >= 0 && tick < unitCount) facts.push(...startOf(tick));
  STATIONS.forEach((_, stationIndex) => {
    const unit = tick - TICKS_PER_STATION * stationIndex;
    if (unit >= 0 && unit < unitCount) facts.push(...workAt(unit, stationIndex));
  });
  const leaving = tick - TICKS_PER_STATION * STATIONS.length;
  if (leaving >= 0 && leaving < unitCount) facts.push(...leavingOf(leaving));
  return facts;
}

function startOf(unit: number): Fact[] {
  const body = { unit: codes.unitCode(unit), product: PRODUCT.number, revision: PRODUCT.revision };
  return [{ type: 'unit.started', atMs: BEGIN_MS + unit * TICK_MS + 100, body }];
}

function workAt(unit: number, stationIndex: number): Fact[] {
  const code = STATIONS[stationIndex]?.code ?? '';
  const atMs = passedMs(unit, stationIndex);
  const begin = new Date(beganMs(unit, stationIndex)).toISOString();
  const span = REEL_SLOTS.some((slot) => slot.stationIndex === stationIndex) ? { startedAt: begin } : {};
  const body = { unit: codes.unitCode(unit), result: 'pass' as const, ...span };
  const pass: Fact = { type: 'unit.processed', station: code, atMs, body };
  const before = unit === 0 ? [] : mountsFor(unit, stationIndex);
  return [...before, pass, ...incidents.afterPass({ unit, stationIndex, code, atMs })];
}

/** What must be put into the slots of a station because a unit comes that is the first of a new reel or tool. */
function mountsFor(unit: number, stationIndex: number): Fact[] {
  const station = STATIONS[stationIndex]?.code ?? '';
  const facts: Fact[] = [];
  for (const { index, slot, part, stationIndex: at } of REEL_SLOTS) {
    if (at !== stationIndex || !(unit === 0 || codes.startsReel(index, unit))) continue;
    const reel = codes.reelOf(index, unit);
    const item = codes.reelCode(index, reel);
    const atMs = mountedMs(unit, stationIndex, incidents.isMountedDuringWork(reel));
    const received = { item, kind: 'reel' as const, part, lot: codes.lotCode(index, reel), quantity: 1000 };
    facts.push({ type: 'item.received', atMs: atMs - 500, body: received });
    facts.push({ type: 'item.mounted', station, atMs, ...incidents.doubtOf(reel), body: { item, slot } });
  }
  for (const tool of TOOL_SLOTS) {
    if (tool.stationIndex !== stationIndex || unit % tool.unitsEach !== 0) continue;
    const item = codes.toolCode(tool, unit);
    const atMs = mountedMs(unit, stationIndex, false);
    facts.push({ type: 'item.received', atMs: atMs - 500, body: { item, kind: tool.holds } });
    facts.push({ type: 'item.mounted', station, atMs, body: { item, slot: tool.slot } });
  }
  return facts;
}

function openingFacts(): Fact[] {
  return STATIONS.flatMap((_, stationIndex) => mountsFor(0, stationIndex));
}

function leavingOf(unit: number): Fact[] {
  const code = codes.unitCode(unit);
  const atMs = BEGIN_MS + (unit + TICKS_PER_STATION * STATIONS.length) * TICK_MS + 7_000;
  const facts: Fact[] = [{ type: 'unit.signed', atMs, body: { unit: code, meaning: 'released' } }];
  const cabinet = incidents.cabinetOf(unit);
  if (cabinet !== null) {
    const into = codes.cabinetCode(cabinet);
    const product = { product: CABINET.number, revision: CABINET.revision };
    facts.push({ type: 'unit.started', atMs: atMs + 500, body: { unit: into, ...product } });
    facts.push({ type: 'unit.joined', atMs: atMs + 600, body: { unit: code, into, position: 'A1' } });
    return facts;
  }
  const carton = Math.floor(unit / codes.UNITS_PER_CARTON);
  const container = codes.cartonCode(carton);
  facts.push({ type: 'unit.packed', atMs: atMs + 1_000, body: { unit: code, container } });
  if (unit % codes.UNITS_PER_CARTON !== codes.UNITS_PER_CARTON - 1) return facts;
  const pallet = Math.floor(carton / codes.CARTONS_PER_PALLET);
  const into = codes.palletCode(pallet);
  facts.push({ type: 'container.nested', atMs: atMs + 1_500, body: { container, into } });
  if (carton % codes.CARTONS_PER_PALLET !== codes.CARTONS_PER_PALLET - 1) return facts;
  const sent = { shipment: `SH-${pallet}`, customer: `Customer ${pallet % 40}` };
  facts.push({ type: 'container.shipped', atMs: atMs + 2_000, body: { container: into, ...sent } });
  return facts;
}

/** UUID version 7 that sorts in the order of time and depends on nothing else. */
function toEvent({ atMs, ...fact }: Fact, sequence: number): WireEvent {
  const time = atMs.toString(16).padStart(12, '0');
  const id = `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${sequence.toString(16).padStart(12, '0')}`;
  return { ...fact, id, at: new Date(atMs).toISOString() };
}
