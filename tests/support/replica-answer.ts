import {
  type ReplicaAnswer,
  type ReplicaCursor,
  replicaAnswerSchema,
} from '@/lib/domain/replica/replica-answer';
import { readReplica } from '@/lib/server/read-replica';

/** What a tablet at a station gets from the server, as it reads it: everything, or what changed since a cursor. */
export async function readReplicaAnswer(
  station: string,
  after: ReplicaCursor | null = null,
): Promise<ReplicaAnswer> {
  const pieces = await readReplica({ station, after }, { kind: 'token' });
  if (pieces === null) throw new Error(`There is no ${station}.`);
  return replicaAnswerSchema.parse(JSON.parse(pieces.join('')));
}
