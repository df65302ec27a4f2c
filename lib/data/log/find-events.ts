import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import type { Queryable } from '@/lib/data/pool';
import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';

const NOT_VOIDED = `not exists (
  select from read.voided v where v.event = e.id and e.type <> 'event.voided')`;

async function select(db: Queryable, where: string, values: unknown[]): Promise<LoggedEvent[]> {
  const { rows } = await db.query(
    `select ${EVENT_COLUMNS} from log.event e where ${where} order by e.at, e.id`,
    values,
  );
  return rows.map(readEventRow);
}

/** Recorded events with the given ids, voided or not; by the unique index, one row an id. */
export function findEventsById(db: Queryable, ids: string[]): Promise<LoggedEvent[]> {
  return select(db, 'e.id = any($1::uuid[])', [ids]);
}

/** All events about a unit that count, in order; by event_of_unit, a unit has some dozens. */
export function findUnitHistory(db: Queryable, unit: string): Promise<LoggedEvent[]> {
  return select(db, `e.unit = $1 and ${NOT_VOIDED}`, [unit]);
}

/** The same for many units at once. */
export async function findUnitHistories(db: Queryable, units: string[]): Promise<Map<string, LoggedEvent[]>> {
  const histories = new Map<string, LoggedEvent[]>(units.map((unit) => [unit, []]));
  for (const event of await select(db, `e.unit = any($1) and ${NOT_VOIDED}`, [units]))
    histories.get(subjectUnit(event) ?? '')?.push(event);
  return histories;
}

/** All events of an item's own life that count (received, counted, mounted …), in order; by event_of_item. */
export function findItemHistory(db: Queryable, item: string): Promise<LoggedEvent[]> {
  return select(db, `(e.body ->> 'item') collate "C" = $1 and e.type like 'item.%' and ${NOT_VOIDED}`, [
    item,
  ]);
}

/** The same for many items at once. */
export async function findItemHistories(db: Queryable, items: string[]): Promise<Map<string, LoggedEvent[]>> {
  const histories = new Map<string, LoggedEvent[]>(items.map((item) => [item, []]));
  const where = `(e.body ->> 'item') collate "C" = any($1) and e.type like 'item.%' and ${NOT_VOIDED}`;
  for (const event of await select(db, where, [items]))
    if ('item' in event.body && event.body.item !== undefined) histories.get(event.body.item)?.push(event);
  return histories;
}

/** Nesting and shipping of a container that count, in order; by event_of_container. */
export function findContainerHistory(db: Queryable, container: string): Promise<LoggedEvent[]> {
  return select(
    db,
    `(e.body ->> 'container') collate "C" = $1 and e.type like 'container.%' and ${NOT_VOIDED}`,
    [container],
  );
}

/** The same for many containers at once. */
export async function findContainerHistories(
  db: Queryable,
  containers: string[],
): Promise<Map<string, LoggedEvent[]>> {
  const histories = new Map<string, LoggedEvent[]>(containers.map((container) => [container, []]));
  const where = `(e.body ->> 'container') collate "C" = any($1) and e.type like 'container.%' and ${NOT_VOIDED}`;
  for (const event of await select(db, where, [containers]))
    if ('container' in event.body) histories.get(event.body.container)?.push(event);
  return histories;
}
