import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { z } from 'zod';
import { type PlantFile, plantFileSchema } from '@/lib/domain/plant/plant-file';
import {
  type ReplicaAnswer,
  type ReplicaUnit,
  replicaAnswerSchema,
  replicaUnitSchema,
} from '@/lib/domain/replica/replica-answer';

const metaSchema = replicaAnswerSchema
  .omit({ units: true, isWhole: true, plant: true })
  .extend({ asOfMs: z.number() });

/** Everything of a replica but its units and the plant; `asOfMs` is when the server said so. */
export type ReplicaMeta = z.infer<typeof metaSchema>;

type Schema = DBSchema & {
  meta: { key: string; value: unknown };
  plant: { key: string; value: unknown };
  unit: { key: [station: string, unit: string]; value: unknown };
};
type Db = IDBPDatabase<Schema>;

/** The replicas of a browser's stations in IndexedDB, apart from the device's log: they can be fetched again. */
export function openReplicaStore(): Promise<Db> {
  return openDB<Schema>('reelkin-replica', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('meta');
      fresh.createObjectStore('plant');
      fresh.createObjectStore('unit');
    },
  });
}

const asOfSchema = z.object({ asOfMs: z.number(), cursor: z.unknown() });

/** What is kept for a station, or null; `known`, from an earlier time, where nothing was written since. */
export async function readReplicaMeta(
  db: Db,
  station: string,
  known: ReplicaMeta | null = null,
): Promise<ReplicaMeta | null> {
  const kept = await db.get('meta', station);
  if (known !== null && isSame(asOfSchema.safeParse(kept).data, known)) return known;
  return metaSchema.safeParse(kept).data ?? null;
}

function isSame(kept: z.infer<typeof asOfSchema> | undefined, known: ReplicaMeta): boolean {
  return kept?.asOfMs === known.asOfMs && JSON.stringify(kept.cursor) === JSON.stringify(known.cursor);
}

/** The plant file that is kept with a station, or null. */
export async function readReplicaPlant(db: Db, station: string): Promise<PlantFile | null> {
  return plantFileSchema.safeParse(await db.get('plant', station)).data ?? null;
}

/** A unit as it is kept for a station, or null; one look-up by key. */
export async function readReplicaUnit(db: Db, station: string, unit: string): Promise<ReplicaUnit | null> {
  return replicaUnitSchema.safeParse(await db.get('unit', [station, unit])).data ?? null;
}

/** Takes in an answer of the server, all of it or nothing; with a whole one, other stations' replicas go. */
export async function writeReplica(
  db: Db,
  station: string,
  { answer, asOfMs }: { answer: ReplicaAnswer; asOfMs: number },
): Promise<void> {
  const { units, isWhole, plant, ...rest } = answer;
  const transaction = db.transaction(['meta', 'plant', 'unit'], 'readwrite');
  const [metas, plants, kept] = [
    transaction.objectStore('meta'),
    transaction.objectStore('plant'),
    transaction.objectStore('unit'),
  ];
  if (isWhole) await Promise.all([metas.clear(), plants.clear(), kept.clear()]);
  if (plant !== null) await plants.put(plant, station);
  await Promise.all(units.map((unit) => kept.put(unit, [station, unit.unit])));
  await metas.put({ ...rest, asOfMs } satisfies ReplicaMeta, station);
  await transaction.done;
}
