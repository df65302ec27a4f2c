import type pg from 'pg';
import Cursor from 'pg-cursor';
import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

const ROWS_AT_ONCE = 5000;

/** Kinds of things that events are about, each with the expression that names it. */
const SUBJECTS = {
  unit: { key: 'e.unit', where: 'e.unit is not null' },
  // A splice stands with the item that it brought.
  item: { key: `coalesce(e.body ->> 'item', e.body ->> 'to') collate "C"`, where: `e.type like 'item.%'` },
  container: { key: `(e.body ->> 'container') collate "C"`, where: `e.type like 'container.%'` },
} as const;
export type SubjectKind = keyof typeof SUBJECTS;

/** An event with its place in the order of arrival. */
export type Arrived = { event: LoggedEvent; position: number };

/** Everything that the log holds about one unit, item or container, in order. */
export type Subject = { subject: string; arrived: Arrived[] };

const rowSchema = z.object({ subject: z.string(), position: z.number() });

/**
 * All units, items or containers with their events from the log, one after the other; read ahead by one page, in the
 * order of the index on the log, so that no more than a page and one subject are in memory.
 */
export async function* readSubjects(client: pg.ClientBase, kind: SubjectKind): AsyncGenerator<Subject> {
  const { key, where } = SUBJECTS[kind];
  const cursor = client.query(
    new Cursor(
      `select ${key} as subject, e.position, ${EVENT_COLUMNS} from log.event e where ${where}
       order by ${key}, e.at, e.id`,
    ),
  );
  let current: Subject | null = null;
  let page = cursor.read(ROWS_AT_ONCE);
  for (let rows = await page; rows.length > 0; rows = await page) {
    page = cursor.read(ROWS_AT_ONCE);
    page.catch(() => undefined);
    for (const row of rows) {
      const { subject, position } = rowSchema.parse(row);
      if (current !== null && current.subject !== subject) {
        yield current;
        current = null;
      }
      current ??= { subject, arrived: [] };
      current.arrived.push({ event: readEventRow(row), position });
    }
  }
  if (current !== null) yield current;
  await cursor.close();
}
