import type { StationEntry } from '@/lib/domain/plant/plant-file';
import type { StationListEntry } from '@/lib/domain/station/station-picture';

/** A station of the plant file as it is chosen from a list. */
export function stationEntryOf({ code, line, operation, slots }: StationEntry): StationListEntry {
  return { code, line: line ?? null, operation, slotCount: slots?.length ?? 0 };
}
