import { stationEntryOf } from '@/lib/domain/station/station-entry';
import type { StationListEntry } from '@/lib/domain/station/station-picture';
import { readPlant } from '@/lib/server/read-plant';

/** All stations in the order of the plant file, for a tablet to choose from. */
export async function listStations(): Promise<{ stations: StationListEntry[] }> {
  const plant = await readPlant();
  return { stations: (plant.file.stations ?? []).map(stationEntryOf) };
}
