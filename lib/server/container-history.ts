import { findContainerRecord } from '@/lib/data/log/find-recorded-events';
import { type LoggedEvent, toLogged } from '@/lib/domain/events/logged-event';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import { compareKeys, type OrderKey } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/** Containers around a unit that are followed. */
const CONTAINERS_MAX = 64;

type Stay = { container: string; from: OrderKey; to: OrderKey | null };

/** What happened to the containers of a unit while it was inside: nested, taken out, shipped. From its own events in order. */
export async function findContainerMoves(own: readonly LoggedEvent[]): Promise<RecordedEvent[]> {
  const stays = packedStays(own);
  const moves = new Map<string, RecordedEvent>();
  for (let index = 0; index < Math.min(stays.length, CONTAINERS_MAX); index += 1) {
    const stay = stays[index];
    if (stay === undefined) break;
    const record = (await findContainerRecord(database().pool, stay.container)).filter(
      ({ event, voidedBy }) => voidedBy === null && event.type.startsWith('container.'),
    );
    for (const recorded of record)
      if (isDuring(stay, toLogged(recorded.event))) moves.set(recorded.event.id, recorded);
    stays.push(
      ...nestedStays(
        record.map(({ event }) => toLogged(event)),
        stay,
      ),
    );
  }
  return [...moves.values()];
}

function isDuring({ from, to }: Stay, key: OrderKey): boolean {
  return compareKeys(key, from) > 0 && (to === null || compareKeys(key, to) < 0);
}

/** From each packing to the event that placed the unit elsewhere. */
function packedStays(own: readonly LoggedEvent[]): Stay[] {
  const placing = own.filter(({ type }) =>
    ['unit.started', 'unit.processed', 'unit.packed', 'unit.unpacked', 'unit.returned'].includes(type),
  );
  return placing.flatMap((event, index) =>
    event.type === 'unit.packed'
      ? [{ container: event.body.container, from: event, to: placing[index + 1] ?? null }]
      : [],
  );
}

/** From each nesting of a container to its end, as far as the unit was in it then. */
function nestedStays(events: readonly LoggedEvent[], inner: Stay): Stay[] {
  return events.flatMap((event, index) => {
    if (event.type !== 'container.nested' || event.body.container !== inner.container) return [];
    const end = events
      .slice(index + 1)
      .find(({ type }) => type === 'container.nested' || type === 'container.unnested');
    const from = compareKeys(event, inner.from) > 0 ? event : inner.from;
    const ends = [end, inner.to].filter((key) => key != null).sort(compareKeys);
    const to = ends[0] ?? null;
    return to !== null && compareKeys(to, from) <= 0 ? [] : [{ container: event.body.into, from, to }];
  });
}
