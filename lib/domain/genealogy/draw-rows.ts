import type { EventOf } from '@/lib/domain/events/catalogue';
import { doubtUs, type LoggedEvent } from '@/lib/domain/events/logged-event';
import { breadthOf } from '@/lib/domain/genealogy/breadth';
import { instantOf } from '@/lib/domain/time';

/** A unit at a station: from the begin of the work to its end, both widened by the doubt about the time. */
export type Pass = { station: string; unit: string; lowUs: number; highUs: number; breadth: number };

/** A draw that an event names itself. */
export type DirectDraw = { source: 'used' | 'installed' | 'board_lot'; item: string; positions: string[] };

/** When a unit was at a station, from its `unit.processed`. */
export function passOf(event: LoggedEvent & EventOf<'unit.processed'>): Pass {
  const beginUs = event.body.startedAt === undefined ? event.atUs : instantOf(event.body.startedAt);
  const lowUs = beginUs - doubtUs(event);
  const highUs = event.atUs + doubtUs(event);
  return { station: event.station, unit: event.body.unit, lowUs, highUs, breadth: breadthOf(highUs - lowUs) };
}

/** The draws that an event names itself, in the order in which it names them. */
export function directDrawsOf(event: LoggedEvent): DirectDraw[] {
  switch (event.type) {
    case 'unit.started':
      return event.body.boardLot === undefined
        ? []
        : [{ source: 'board_lot', item: event.body.boardLot, positions: [] }];
    case 'unit.processed':
      return (event.body.used ?? []).map(({ item, positions }) => ({
        source: 'used',
        item,
        positions: positions ?? [],
      }));
    case 'part.installed':
      return event.body.item === undefined
        ? []
        : [{ source: 'installed', item: event.body.item, positions: [event.body.position] }];
    default:
      return [];
  }
}
