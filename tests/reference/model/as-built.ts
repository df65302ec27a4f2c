import type {
  AsBuiltAnswer,
  AsBuiltDraw,
  AsBuiltHold,
  AsBuiltJoin,
} from '@/tests/reference/model/answer-types';
import { type Draw, drawsOf, relationOf } from '@/tests/reference/model/draws';
import { type History, liveOf, productOf } from '@/tests/reference/model/history';
import { type Join, joinsOf } from '@/tests/reference/model/joins';
import { containersAround, type Picked, placeOf } from '@/tests/reference/model/places';
import type { WireEvent } from '@/tests/reference/model/wire-types';

/** Answers `GET /api/trace/as-built`; times are the texts that the senders wrote. */
export function asBuilt(history: History, unit: string, picked: Picked): AsBuiltAnswer {
  const place = placeOf(history, unit, picked);
  const joins = joinsOf(history);
  return {
    unit,
    ...productOf(history, unit),
    draws: drawsOf(history, unit).map((draw) => drawRow(history, draw)),
    children: joins.filter((join) => join.into === unit).map((join) => joinRow(join, join.unit)),
    parents: joins.filter((join) => join.unit === unit).map((join) => joinRow(join, join.into)),
    containers: place !== null && 'container' in place ? containersAround(history, place.container) : [],
    place,
    holds: holdsOn(history, unit),
    events: history.all
      .filter(({ event }) => concerns(event, unit))
      .map(({ event, key }) => ({
        id: key.id,
        type: event.type,
        at: event.at,
        voided: history.voidedIds.has(key.id),
      })),
  };
}

function drawRow(history: History, draw: Draw): AsBuiltDraw {
  const { item, kind, part, lot, positions, station, slot, certainty, via } = draw;
  const { at } = draw.source.event;
  const by = draw.source.key.id;
  const relation = relationOf(history, draw);
  return { item, kind, part, lot, positions, station, slot, at, certainty, relation, by, via };
}

function joinRow({ joined, separated }: Join, otherUnit: string): AsBuiltJoin {
  return {
    unit: otherUnit,
    position: joined.event.body.position,
    at: joined.event.at,
    by: joined.key.id,
    until: separated?.event.at ?? null,
    endedBy: separated?.key.id ?? null,
  };
}

function holdsOn(history: History, unit: string): AsBuiltHold[] {
  return liveOf(history, 'hold.placed')
    .filter(({ event }) => event.body.target.kind === 'unit' && event.body.target.id === unit)
    .map(({ event, key }) => {
      const released = liveOf(history, 'hold.released').find(
        (release) => release.event.body.hold.toLowerCase() === key.id,
      );
      return {
        hold: key.id,
        reason: event.body.reason,
        at: event.at,
        releasedBy: released?.key.id ?? null,
        disposition: released?.event.body.disposition ?? null,
      };
    });
}

/** Whether the event names the unit, whatever for. */
function concerns({ body }: WireEvent, unit: string): boolean {
  return (
    ('unit' in body && body.unit === unit) ||
    ('position' in body && 'into' in body && body.into === unit) ||
    ('unit' in body && 'from' in body && body.from === unit) ||
    ('fromUnit' in body && body.fromUnit === unit) ||
    ('target' in body && body.target.kind === 'unit' && body.target.id === unit)
  );
}
