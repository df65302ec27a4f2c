import type { Certainty, Relation } from '@/tests/reference/model/answer-types';
import { type History, itemFacts, liveOf, type Recorded } from '@/tests/reference/model/history';
import { compareKeys, type OrderKey, type Period } from '@/tests/reference/model/order';
import { slotDraws } from '@/tests/reference/model/slot-draws';

/**
 * An item that went into a unit or touched it: `source` is the event that drew it first, `heldFrom` the
 * moment since when this unit holds it (for a salvaged part, its installation).
 */
export type Draw = {
  unit: string;
  item: string;
  kind: string | null;
  part: string | null;
  lot: string | null;
  boardLot: string | null;
  positions: string[];
  station: string | null;
  slot: string | null;
  certainty: Certainty;
  source: Recorded;
  heldFrom: OrderKey;
  via: string[];
};

/** Everything that the unit ever drew, salvaged parts included, by the order of the supplying events. */
export function drawsOf(history: History, unit: string): Draw[] {
  const draws = [...ownDraws(history, unit), ...carriedDraws(history, unit)];
  return draws.sort((left, right) => compareKeys(left.heldFrom, right.heldFrom));
}

function ownDraws(history: History, unit: string): Draw[] {
  const draws: Draw[] = [];
  for (const pass of liveOf(history, 'unit.processed')) {
    if (pass.event.body.unit !== unit) continue;
    draws.push(...slotDraws(history, pass));
    for (const { item, positions } of pass.event.body.used ?? []) {
      draws.push(namedDraw(history, pass, unit, item, positions ?? []));
    }
  }
  for (const installed of liveOf(history, 'part.installed')) {
    const { body } = installed.event;
    if (body.unit === unit && 'item' in body) {
      draws.push(namedDraw(history, installed, unit, body.item, [body.position]));
    }
  }
  for (const started of liveOf(history, 'unit.started')) {
    if (started.event.body.unit !== unit) continue;
    const { boardLot } = started.event.body;
    if (boardLot !== undefined) draws.push(boardLotDraw(history, started, unit, boardLot));
  }
  return draws;
}

/** A draw whose item the event names itself: always certain, from no slot. */
function namedDraw(
  history: History,
  source: Recorded,
  unit: string,
  item: string,
  positions: string[],
): Draw {
  const facts = itemFacts(history, item);
  return {
    unit,
    item,
    kind: facts?.kind ?? null,
    part: facts?.part ?? null,
    lot: facts?.lot ?? null,
    boardLot: null,
    positions,
    station: source.event.station ?? null,
    slot: null,
    certainty: 'certain',
    source,
    heldFrom: source.key,
    via: [],
  };
}

function boardLotDraw(history: History, source: Recorded, unit: string, boardLot: string): Draw {
  const draw = namedDraw(history, source, unit, boardLot, []);
  return { ...draw, kind: draw.kind ?? 'lot', lot: draw.lot ?? boardLot, boardLot };
}

/** What salvage brought; it ends because each carried draw is older than the installation that asks. */
function carriedDraws(history: History, unit: string): Draw[] {
  const draws: Draw[] = [];
  for (const installed of liveOf(history, 'part.installed')) {
    const { body } = installed.event;
    if (body.unit !== unit || !('fromUnit' in body)) continue;
    const cutoff = lastRemovalBefore(history, body.fromUnit, body.fromPosition, installed.key);
    for (const draw of drawsBefore(history, body.fromUnit, cutoff)) {
      if (!draw.positions.includes(body.fromPosition)) continue;
      draws.push({
        ...draw,
        unit,
        positions: [body.position],
        heldFrom: installed.key,
        via: [...draw.via, installed.key.id],
      });
    }
  }
  return draws;
}

/** The draws that the unit already had before the cutoff, from the history that came before it. */
function drawsBefore(history: History, unit: string, cutoff: OrderKey): Draw[] {
  const own = ownDraws(history, unit).filter(({ heldFrom }) => compareKeys(heldFrom, cutoff) < 0);
  const earlierInstallations = history.live.filter(
    ({ event, key }) => event.type !== 'part.installed' || compareKeys(key, cutoff) < 0,
  );
  return [...own, ...carriedDraws({ ...history, live: earlierInstallations }, unit)];
}

function lastRemovalBefore(history: History, unit: string, position: string, key: OrderKey): OrderKey {
  return removalsOf(history, unit, position).findLast((removal) => compareKeys(removal, key) < 0) ?? key;
}

function removalsOf(history: History, unit: string, position: string): OrderKey[] {
  return liveOf(history, 'part.removed')
    .filter(({ event }) => event.body.unit === unit && event.body.position === position)
    .map(({ key }) => key);
}

/** From the event that supplied it until the last of its positions was removed for the first time. */
export function heldPeriod(history: History, draw: Draw): Period {
  const open = { from: draw.heldFrom, to: null };
  if (!isMaterial(draw) || draw.positions.length === 0) return open;
  const firstRemovals: OrderKey[] = [];
  for (const position of draw.positions) {
    const later = removalsOf(history, draw.unit, position);
    const first = later.find((removal) => compareKeys(removal, draw.heldFrom) > 0);
    if (first === undefined) return open;
    firstRemovals.push(first);
  }
  return { from: draw.heldFrom, to: firstRemovals.sort(compareKeys).at(-1) ?? null };
}

/** The relation of the unit that drew it (wire.md, Relation). */
export function relationOf(history: History, draw: Draw): Relation {
  if (!isMaterial(draw)) return 'touched';
  return heldPeriod(history, draw).to === null ? 'contains' : 'formerly';
}

function isMaterial(draw: Draw): boolean {
  return draw.kind === null || draw.kind === 'reel' || draw.kind === 'lot';
}
