import { loadPlant } from '@/lib/data/plant/load-plant';
import { insertPlantVersion, refreshPlantTables } from '@/lib/data/plant/write-plant';
import { refreshAfterPlant } from '@/lib/data/record/refresh-after-plant';
import { asWriter } from '@/lib/data/transaction';
import { type InputError, inputErrors } from '@/lib/domain/input-errors';
import { mergePlant } from '@/lib/domain/plant/merge-plant';
import { indexPlant } from '@/lib/domain/plant/plant';
import { type PlantFile, plantFileSchema } from '@/lib/domain/plant/plant-file';
import { type PlantWarning, plantWarnings } from '@/lib/domain/plant/plant-warnings';
import { tellChange } from '@/lib/server/changes';
import { database } from '@/lib/server/database';

/** What became of a plant file: the whole plant with warnings, or what is wrong with it. */
export type PutPlantResult =
  | { ok: true; plant: PlantFile; warnings: PlantWarning[] }
  | { ok: false; errors: InputError[] };

/** Puts a plant file on top of the plant, all or nothing; what it omits stays. Idempotent. */
export async function putPlant(document: unknown, recordedBy: string): Promise<PutPlantResult> {
  const parsed = plantFileSchema.safeParse(document);
  if (!parsed.success) return { ok: false, errors: inputErrors(parsed.error) };
  const plant = await asWriter(database().pool, async (client) => {
    const before = await loadPlant(client);
    const file = mergePlant(before.plant.file, parsed.data);
    const hasChanged = JSON.stringify(file) !== JSON.stringify(before.plant.file);
    if (!hasChanged) return file;
    const after = indexPlant(file);
    await insertPlantVersion(client, file, recordedBy);
    await refreshPlantTables(client, after);
    await refreshAfterPlant(client, before.plant, after);
    return file;
  });
  tellChange();
  return { ok: true, plant, warnings: plantWarnings(indexPlant(plant)) };
}
