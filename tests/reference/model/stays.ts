import { type History, itemFacts, liveOf, type Recorded } from '@/tests/reference/model/history';
import { compareCodes, compareKeys } from '@/tests/reference/model/order';
import { bomLinesOf, drawsFrom, endOf, entriesOf, spanOf } from '@/tests/reference/model/slot-draws';
import type { EventOf } from '@/tests/reference/model/wire-types';

/** An item in a slot from one time to another, in microseconds; the bounds are widened by the doubts of both changes. */
export type ModelStay = {
  id: string;
  item: string;
  station: string;
  slot: string;
  from: number;
  to: number;
  fromLow: number;
  fromHigh: number;
  toLow: number;
  toHigh: number;
  /** The item whose end was spliced to it, and until when units may draw from either; null where there is none. */
  spliced: { from: string; greyUntil: number | null } | null;
};

/** A unit at a station, its span widened by its doubt; the pieces that its BOM puts on it from a slot. */
export type ModelPass = { unit: string; low: number; high: number; pieces: number };

/** Every stay that is not empty, by station, slot and order. */
export function modelStays(history: History): ModelStay[] {
  return entriesOf(history)
    .map((entry) => {
      const { event, key, doubtUs } = entry;
      const end = endOf(history, entry);
      return {
        key,
        id: key.id,
        item: event.type === 'item.mounted' ? event.body.item : event.body.to,
        station: event.station ?? '',
        slot: event.body.slot,
        from: key.us,
        to: end?.key.us ?? Infinity,
        fromLow: key.us - doubtUs,
        fromHigh: key.us + doubtUs,
        toLow: end === undefined ? Infinity : end.key.us - end.doubtUs,
        toHigh: end === undefined ? Infinity : end.key.us + end.doubtUs,
        spliced:
          event.type === 'item.spliced'
            ? { from: event.body.from, greyUntil: greyUntil(history, entry as Splice) }
            : null,
      };
    })
    .filter(({ from, to }) => from < to)
    .sort(
      (a, b) =>
        compareCodes(a.station, b.station) || compareCodes(a.slot, b.slot) || compareKeys(a.key, b.key),
    );
}

type Splice = Recorded<EventOf<'item.spliced'>>;

/** When the zone after a splice is used up: by so many units that draw from the slot, or by another change there. */
export function greyUntil(history: History, splice: Splice): number | null {
  const { greyUnits, slot, to } = splice.event.body;
  if (greyUnits === 0) return null;
  const end = endOf(history, splice);
  const ended = end === undefined ? Infinity : end.key.us + end.doubtUs;
  if (greyUnits === undefined) return ended;
  const limit =
    end?.event.type === 'item.spliced'
      ? Math.max(ended, greyUntil(history, end as Splice) ?? -Infinity)
      : ended;
  const after: number[] = [];
  for (const pass of liveOf(history, 'unit.processed')) {
    const station = splice.event.station ?? '';
    if (pass.event.station !== station || !drawsFrom(history, pass, station, slot, to)) continue;
    const { a, b } = spanOf(pass);
    if (a - pass.doubtUs >= splice.key.us + splice.doubtUs) after.push(b + pass.doubtUs);
  }
  const last = after.sort((x, y) => x - y)[greyUnits - 1];
  return last === undefined ? limit : Math.min(limit, last + 1);
}

/** The passes at a station whose BOM names a slot, and how many pieces it puts on each unit from there. */
export function drawingPasses(history: History, station: string, slot: string): ModelPass[] {
  return liveOf(history, 'unit.processed').flatMap((pass) => {
    if (pass.event.station !== station) return [];
    const lines = bomLinesOf(history, pass.event.body.unit, station, slot);
    if (lines.length === 0) return [];
    const { a, b } = spanOf(pass);
    const pieces = new Set(lines.flatMap(({ positions }) => positions)).size;
    return [{ unit: pass.event.body.unit, low: a - pass.doubtUs, high: b + pass.doubtUs, pieces }];
  });
}

/** The part of an item, as its last receipt says. */
export function partOf(history: History, item: string): string | null {
  return itemFacts(history, item)?.part ?? null;
}
