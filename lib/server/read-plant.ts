import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Plant } from '@/lib/domain/plant/plant';
import { database } from '@/lib/server/database';

/** The plant as it stands. */
export async function readPlant(): Promise<Plant> {
  return (await loadPlant(database().pool)).plant;
}
