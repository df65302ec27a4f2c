import type { Queryable } from '@/lib/data/pool';
import { type ReplicaCursor, replicaCursorSchema } from '@/lib/domain/replica/replica-answer';

/** How far the record has come, as one snapshot sees it; three look-ups at the end of a primary key. */
export async function findReplicaCursor(db: Queryable): Promise<ReplicaCursor> {
  const { rows } = await db.query(
    `select coalesce((select max(position) from log.event), 0) as event,
       coalesce((select max(position) from log.judgement), 0) as judgement,
       coalesce((select max(version) from plant.version), 0) as plant`,
  );
  return replicaCursorSchema.parse(rows[0]);
}
