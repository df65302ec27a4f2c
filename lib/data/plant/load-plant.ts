import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { indexPlant, type Plant } from '@/lib/domain/plant/plant';
import { type PlantFile, plantFileSchema } from '@/lib/domain/plant/plant-file';

/** The plant as it stands, with the number of its version (0 before the first). */
export type PlantVersion = { version: number; plant: Plant };

const versionRowSchema = z.object({ version: z.number(), recorded_at: z.number() });
const fileRowSchema = z.object({ file: plantFileSchema });

let latest = { version: 0, recordedAtUs: 0, plant: indexPlant({}) };

/** The newest plant; kept in memory and read again only when the version has moved on. */
export async function loadPlant(db: Queryable): Promise<PlantVersion> {
  const { rows } = await db.query(
    'select version, recorded_at from plant.version order by version desc limit 1',
  );
  if (rows[0] === undefined) return { version: 0, plant: indexPlant({}) };
  const { version, recorded_at: recordedAtUs } = versionRowSchema.parse(rows[0]);
  if (version !== latest.version || recordedAtUs !== latest.recordedAtUs)
    latest = { version, recordedAtUs, plant: indexPlant(await loadFile(db, version)) };
  return latest;
}

async function loadFile(db: Queryable, version: number): Promise<PlantFile> {
  const { rows } = await db.query('select file from plant.version where version = $1', [version]);
  return fileRowSchema.parse(rows[0]).file;
}
