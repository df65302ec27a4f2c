import { isMaterial } from '@/lib/domain/gate/material-rules';
import type { Plant } from '@/lib/domain/plant/plant';
import type { ProductEntry, StationEntry } from '@/lib/domain/plant/plant-file';

/** Names of the slots that a unit of a product draws from at a station: all tools, and the material its BOM names. */
export function neededSlots(plant: Plant, station: StationEntry, product: ProductEntry | null): Set<string> {
  const tools = (station.slots ?? []).filter(({ holds }) => !isMaterial(holds)).map(({ name }) => name);
  return new Set([...tools, ...plant.suppliesAt(station.code, product).map(({ slot }) => slot)]);
}
