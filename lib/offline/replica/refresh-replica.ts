import {
  REPLICA_GROWTH_MAX,
  REPLICA_UNITS_MAX,
  replicaAnswerSchema,
} from '@/lib/domain/replica/replica-answer';
import { openReplicaStore, readReplicaMeta, writeReplica } from '@/lib/offline/replica/replica-store';

/** A whole replica takes longer than any other answer, and nobody waits for it. */
const ANSWER_LIMIT_MS = 60_000;

/**
 * Asks the server for what changed since the last time, or for everything, and keeps it. Whether the server answered,
 * whatever it said. Needs no page: it runs in a worker.
 */
export async function refreshReplica(station: string): Promise<boolean> {
  const db = await openReplicaStore();
  try {
    const isFull = (await db.count('unit')) > REPLICA_UNITS_MAX + REPLICA_GROWTH_MAX;
    const before = isFull ? undefined : (await readReplicaMeta(db, station))?.cursor;
    const query = new URLSearchParams({ station });
    for (const [name, position] of Object.entries(before ?? {})) query.set(name, String(position));
    const response = await fetch(`/api/replica?${query}`, { signal: AbortSignal.timeout(ANSWER_LIMIT_MS) });
    if (!response.ok) return response.status < 500;
    const answer = replicaAnswerSchema.parse(await response.json());
    // Another tab may have read on meanwhile: changes fit only what they were asked for.
    const now = (await readReplicaMeta(db, station))?.cursor;
    const isFitting = answer.isWhole || JSON.stringify(now) === JSON.stringify(before);
    if (isFitting) await writeReplica(db, station, { answer, asOfMs: Date.now() });
    return true;
  } catch {
    return false;
  } finally {
    db.close();
  }
}
