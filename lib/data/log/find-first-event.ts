import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** The event that was recorded first, whatever its time; null in an empty log. One row by the primary key. */
export async function findFirstEvent(db: Queryable): Promise<LoggedEvent | null> {
  const { rows } = await db.query(`select ${EVENT_COLUMNS} from log.event e order by e.position limit 1`);
  return rows[0] === undefined ? null : readEventRow(rows[0]);
}
