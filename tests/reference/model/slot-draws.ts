import type { Certainty } from '@/tests/reference/model/answer-types';
import type { Draw } from '@/tests/reference/model/draws';
import {
  type History,
  itemFacts,
  liveOf,
  plantProductOf,
  type Recorded,
} from '@/tests/reference/model/history';
import { compareKeys, instantUs } from '@/tests/reference/model/order';
import type { BomLine, EventOf } from '@/tests/reference/model/wire-types';

/** What the unit drew from the slots of the station at this pass. */
export function slotDraws(history: History, pass: Recorded<EventOf<'unit.processed'>>): Draw[] {
  const { unit } = pass.event.body;
  const station = pass.event.station;
  if (station === undefined) return [];
  const draws: Draw[] = [];
  const drawFrom = (slot: string, item: string, certainty: Certainty) => {
    const lines = bomLinesOf(history, unit, station, slot);
    const facts = itemFacts(history, item);
    const holds = declaredHolds(history, station, slot) ?? facts?.kind ?? 'reel';
    if ((holds === 'reel' || holds === 'lot') && lines.length === 0) return;
    draws.push({
      unit,
      item,
      kind: facts?.kind ?? holds,
      part: facts?.part ?? null,
      lot: facts?.lot ?? null,
      boardLot: null,
      positions: [...new Set(lines.flatMap((line) => line.positions))],
      station,
      slot,
      certainty,
      source: pass,
      heldFrom: pass.key,
      via: [],
    });
  };
  for (const stay of staysAt(history, station)) {
    const certainty = certaintyOf(history, pass, stay);
    if (certainty !== null) drawFrom(stay.slot, stay.item, certainty);
  }
  return inDoubt(history, pass, draws, drawFrom);
}

/** The draws, where windows of doubt make them only possible, and add what the record does not have there. */
function inDoubt(
  history: History,
  pass: Pass,
  draws: Draw[],
  drawFrom: (slot: string, item: string, certainty: Certainty) => void,
): Draw[] {
  const { a, b } = spanOf(pass);
  for (const { station, slot, low, high, items } of history.windows) {
    if (station !== pass.event.station || a - pass.doubtUs > high || b + pass.doubtUs < low) continue;
    for (const item of items) {
      const recorded = draws.filter((draw) => draw.slot === slot && draw.item === item);
      for (const draw of recorded) draw.certainty = 'possible';
      if (recorded.length === 0) drawFrom(slot, item, 'possible');
    }
  }
  return draws;
}

export function bomLinesOf(history: History, unit: string, station: string, slot: string): BomLine[] {
  const bom = plantProductOf(history, unit)?.bom ?? [];
  return bom.filter((line) => line.station === station && line.slot === slot);
}

function declaredHolds(history: History, station: string, slot: string): string | undefined {
  const declared = history.plant.stations.find((known) => known.code === station);
  return declared?.slots.find((known) => known.name === slot)?.holds;
}

type Entry = Recorded<EventOf<'item.mounted'>> | Recorded<EventOf<'item.spliced'>>;
type Ending = Entry | Recorded<EventOf<'item.unmounted'>>;
type Pass = Recorded<EventOf<'unit.processed'>>;

/** An item in a slot: put there, or ended there by a splice with its last parts still to come. */
type Stay = { item: string; slot: string; entry: Entry; isTail: boolean };

export function entriesOf(history: History): Entry[] {
  return [...liveOf(history, 'item.mounted'), ...liveOf(history, 'item.spliced')];
}

function staysAt(history: History, station: string): Stay[] {
  return entriesOf(history)
    .filter(({ event }) => event.station === station)
    .flatMap((entry): Stay[] => {
      const { event } = entry;
      const { slot } = event.body;
      if (event.type === 'item.mounted') return [{ item: event.body.item, slot, entry, isTail: false }];
      return [
        { item: event.body.to, slot, entry, isTail: false },
        { item: event.body.from, slot, entry, isTail: true },
      ];
    });
}

/** The first later change of that slot that ends the stay begun by the entry; undefined while it stands there. */
export function endOf(history: History, entry: Entry): Ending | undefined {
  const { event } = entry;
  const item = event.type === 'item.mounted' ? event.body.item : event.body.to;
  const later = [...entriesOf(history), ...liveOf(history, 'item.unmounted')]
    .filter(({ key }) => compareKeys(key, entry.key) > 0)
    .sort((left, right) => compareKeys(left.key, right.key));
  return later.find(
    (each) =>
      each.event.station === event.station &&
      each.event.body.slot === event.body.slot &&
      (each.event.type !== 'item.unmounted' || each.event.body.item === item),
  );
}

export function spanOf(pass: Pass): { a: number; b: number } {
  const { startedAt } = pass.event.body;
  return { a: startedAt === undefined ? pass.key.us : instantUs(startedAt), b: pass.key.us };
}

/**
 * Whether a pass is in the grey zone of a splice: fewer than `greyUnits` units that draw from the slot have
 * certainly been between the splice and it, and nobody has changed the slot otherwise.
 */
function inGreyZone(history: History, pass: Pass, splice: Recorded<EventOf<'item.spliced'>>): boolean {
  const { slot, greyUnits } = splice.event.body;
  const { a, b } = spanOf(pass);
  if (b + pass.doubtUs < splice.key.us - splice.doubtUs) return false;
  const end = endOf(history, splice);
  const isBeforeEnd = end === undefined || a - pass.doubtUs < end.key.us + end.doubtUs;
  if (greyUnits === undefined) return isBeforeEnd;
  if (greyUnits === 0) return false;
  if (!isBeforeEnd && end?.event.type !== 'item.spliced') return false;
  if (!isBeforeEnd && end?.event.type === 'item.spliced' && !inGreyZone(history, pass, end as typeof splice))
    return false;
  const passedBetween = liveOf(history, 'unit.processed').filter((other) => {
    if (other.event.station !== splice.event.station) return false;
    if (!drawsFrom(history, other, splice.event.station ?? '', slot, splice.event.body.to)) return false;
    const span = spanOf(other);
    const isAfterSplice = span.a - other.doubtUs >= splice.key.us + splice.doubtUs;
    return isAfterSplice && span.b + other.doubtUs < a - pass.doubtUs;
  });
  return passedBetween.length < greyUnits;
}

export function drawsFrom(
  history: History,
  pass: Pass,
  station: string,
  slot: string,
  item: string,
): boolean {
  const holds = declaredHolds(history, station, slot) ?? itemFacts(history, item)?.kind ?? 'reel';
  const isMaterial = holds === 'reel' || holds === 'lot';
  return !isMaterial || bomLinesOf(history, pass.event.body.unit, station, slot).length > 0;
}

/** The certainty of wire.md for a span [a, b] and an interval [from, to), with the grey zones; null is no draw. */
function certaintyOf(history: History, pass: Pass, { entry, isTail }: Stay): Certainty | null {
  const end = endOf(history, entry);
  const from = entry.key.us;
  const to = end?.key.us ?? Infinity;
  if (from >= to) return null;
  const { event } = entry;
  const isGrey = event.type === 'item.spliced' && inGreyZone(history, pass, entry as Recorded<typeof event>);
  if (isTail) return isGrey ? 'possible' : null;
  const { a, b } = spanOf(pass);
  const u = pass.doubtUs;
  const f = entry.doubtUs;
  const g = end?.doubtUs ?? 0;
  if (a - u - f >= from && b + u + g < to) return isGrey ? 'possible' : 'certain';
  if (b + u + f >= from && a - u - g < to) return 'possible';
  return null;
}

/** Everything that stood in slots, by the BOM or not, while a unit was there, or one that it has a part from. */
export function itemsAround(history: History, unit: string): string[] {
  const family = new Set([unit]);
  for (const each of family)
    for (const { event } of liveOf(history, 'part.installed'))
      if (event.body.unit === each && 'fromUnit' in event.body) family.add(event.body.fromUnit);
  const items = new Set<string>();
  for (const pass of liveOf(history, 'unit.processed'))
    if (family.has(pass.event.body.unit))
      for (const stay of staysAt(history, pass.event.station ?? ''))
        if (certaintyOf(history, pass, stay) !== null) items.add(stay.item);
  return [...items];
}
