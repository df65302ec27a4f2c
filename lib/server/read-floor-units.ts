import { findFloorUnits } from '@/lib/data/floor/find-floor-units';
import type { FloorUnits, FloorUnitsQuestion } from '@/lib/domain/floor/floor-units';
import { database } from '@/lib/server/database';

/** The units behind a count of the floor screen, as they are now. */
export function readFloorUnits(question: FloorUnitsQuestion): Promise<FloorUnits> {
  return findFloorUnits(database().pool, question);
}
