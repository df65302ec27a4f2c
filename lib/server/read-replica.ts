import { loadPlant } from '@/lib/data/plant/load-plant';
import { findChangedUnits } from '@/lib/data/replica/find-changed-units';
import { findReplicaCursor } from '@/lib/data/replica/find-replica-cursor';
import { findUnitsByCode, findUnitsDue } from '@/lib/data/replica/find-replica-units';
import { findSlotItems } from '@/lib/data/replica/find-slot-items';
import { onSnapshot } from '@/lib/data/transaction';
import type { Principal } from '@/lib/domain/people/principal';
import {
  REPLICA_UNITS_MAX,
  type ReplicaAnswer,
  type ReplicaCursor,
} from '@/lib/domain/replica/replica-answer';
import { database } from '@/lib/server/database';
import { readDefects, stationPicture } from '@/lib/server/read-station';

// Beyond this, sending everything is the shorter answer.
const CHANGED_UNITS_MAX = 5000;

/**
 * What a tablet needs to judge at a station without the server: everything, or what changed since a cursor; on one
 * snapshot, so that its parts and its cursor agree. The pieces of a `ReplicaAnswer` as JSON; null when there is no such
 * station.
 */
export async function readReplica(
  question: { station: string; after: ReplicaCursor | null },
  principal: Principal,
): Promise<string[] | null> {
  const { station: code, after } = question;
  const defectsOfPlant = await readDefects();
  return onSnapshot(database().pool, async (db) => {
    const cursor = await findReplicaCursor(db);
    const { plant } = await loadPlant(db);
    const station = await stationPicture(db, { plant, code, principal, defectsOfPlant });
    if (station === null) return null;
    // A cursor from ahead of the record was given by another one: a database that was restored.
    const isOurs =
      after !== null &&
      after.plant === cursor.plant &&
      after.event <= cursor.event &&
      after.judgement <= cursor.judgement;
    const changed = isOurs ? await findChangedUnits(db, after, CHANGED_UNITS_MAX) : null;
    const head: Omit<ReplicaAnswer, 'units'> = {
      cursor,
      isWhole: changed === null,
      plant: changed === null ? plant.file : null,
      station,
      items: await findSlotItems(db, code),
    };
    const units =
      changed === null
        ? await findUnitsDue(db, station.station.operation, REPLICA_UNITS_MAX)
        : await findUnitsByCode(db, changed);
    return textOf(head, units);
  });
}

/** A `ReplicaAnswer` in pieces: the units are JSON already. */
function textOf(head: Omit<ReplicaAnswer, 'units'>, units: readonly string[]): string[] {
  const pieces = units.map((piece, index) => (index === 0 ? piece : `,${piece}`));
  return [`${JSON.stringify(head).slice(0, -1)},"units":[`, ...pieces, ']}'];
}
