import type { WireEvent } from '@/lib/domain/events/catalogue';
import * as codes from '@/scripts/bench/line/bench-codes';
import { REEL_SLOTS } from '@/scripts/bench/line/bench-plant';

// Rare enough to look like a plant, often enough that every question meets them.
const REPAIRED_EACH = 40;
const SALVAGED_EACH = 400;
const CABINET_EACH = 50;
const FAILED_EACH = 30;
const AOI = 9;
const REPAIR_AT = 11;

type Fact = WireEvent extends infer E
  ? E extends WireEvent
    ? Omit<E, 'id' | 'at'> & { atMs: number }
    : never
  : never;

/** Every fourth reel is changed while a unit is worked on: that unit may have drawn from both. */
export function isMountedDuringWork(reel: number): boolean {
  return reel % 4 === 1;
}

/** Every eighth change was noted by a clock that may be five seconds wrong. */
export function doubtOf(reel: number): { uncertaintyMs?: number } {
  return reel % 8 === 3 ? { uncertaintyMs: 5_000 } : {};
}

/** The cabinet that a unit is built into, or null. */
export function cabinetOf(unit: number): number | null {
  return unit % CABINET_EACH === 7 ? Math.floor(unit / CABINET_EACH) : null;
}

/** How a unit was repaired: its first part of a slot was replaced, by a spare or by one salvaged from the unit before. */
export function repairOf(unit: number): { position: string; slot: number; isSalvage: boolean } | null {
  if (unit % REPAIRED_EACH !== 3) return null;
  const slot = REEL_SLOTS[Math.floor(unit / REPAIRED_EACH) % REEL_SLOTS.length];
  const position = slot?.positions[0];
  if (slot === undefined || position === undefined) return null;
  return { position, slot: slot.index, isSalvage: unit % SALVAGED_EACH === 3 };
}

/** What befalls a unit after its pass at a station: a failed result before it, or a repair. */
export function afterPass(pass: { unit: number; stationIndex: number; code: string; atMs: number }): Fact[] {
  const { unit, stationIndex, code, atMs } = pass;
  const name = codes.unitCode(unit);
  const facts: Fact[] = [];
  if (stationIndex === AOI && unit % FAILED_EACH === 11) {
    const body = { unit: name, result: 'fail' as const, defects: [{ code: 'BRIDGE' }] };
    facts.push({ type: 'unit.processed', station: code, atMs: atMs - 300, body });
  }
  const repair = stationIndex === REPAIR_AT ? repairOf(unit) : null;
  if (repair === null) return facts;
  const { position, isSalvage } = repair;
  facts.push({ type: 'part.removed', atMs: atMs + 1_000, body: { unit: name, position } });
  if (isSalvage) {
    const donor = codes.unitCode(unit - 1);
    facts.push({ type: 'part.removed', atMs: atMs + 1_100, body: { unit: donor, position } });
    const body = { unit: name, position, fromUnit: donor, fromPosition: position };
    facts.push({ type: 'part.installed', atMs: atMs + 2_000, body });
    return facts;
  }
  const item = codes.spareCode(unit);
  facts.push({ type: 'item.received', atMs: atMs + 1_500, body: { item, kind: 'lot' } });
  facts.push({ type: 'part.installed', atMs: atMs + 2_000, body: { unit: name, position, item } });
  return facts;
}
