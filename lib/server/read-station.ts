import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { countDefects } from '@/lib/data/station/count-defects';
import { findRecentFits } from '@/lib/data/station/find-recent-fits';
import { findRecentJoins } from '@/lib/data/station/find-recent-joins';
import { findRecentResults } from '@/lib/data/station/find-recent-results';
import { findStandingItems } from '@/lib/data/station/find-standing-items';
import { findUsualReadings } from '@/lib/data/station/find-usual-readings';
import { onSnapshot } from '@/lib/data/transaction';
import type { Principal } from '@/lib/domain/people/principal';
import type { Plant } from '@/lib/domain/plant/plant';
import type { StationEntry } from '@/lib/domain/plant/plant-file';
import { productsAt } from '@/lib/domain/station/products-at';
import { slotPictures } from '@/lib/domain/station/slot-picture';
import { isOnAnyRoute } from '@/lib/domain/station/startable';
import { stationEntryOf } from '@/lib/domain/station/station-entry';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import { database } from '@/lib/server/database';
import { remember } from '@/lib/server/remember';

const RECENT_COUNT = 10;
const DEFECTS_COUNT = 12;
const DEFECTS_ELSEWHERE_COUNT = 60;
const DEFECTS_AGE_MS = 60_000;

/** Codes of the whole plant; every tablet asks for them every few seconds, so they are counted once a minute. */
export const readDefects = remember(async () => {
  const rows = await countDefects(database().pool, null, DEFECTS_ELSEWHERE_COUNT);
  return rows.map((row) => row.code);
}, DEFECTS_AGE_MS);

/** Everything that the screen of a station shows before a unit is scanned; null when there is no such station. */
export async function readStation(code: string, principal: Principal): Promise<StationPicture | null> {
  const defectsOfPlant = await readDefects();
  return onSnapshot(database().pool, async (db) => {
    const { plant } = await loadPlant(db);
    return stationPicture(db, { plant, code, principal, defectsOfPlant });
  });
}

/** The same on a snapshot that is open already; `defectsOfPlant` are read before it, on a connection of their own. */
export async function stationPicture(
  db: Queryable,
  {
    plant,
    code,
    principal,
    defectsOfPlant,
  }: { plant: Plant; code: string; principal: Principal; defectsOfPlant: readonly string[] },
): Promise<StationPicture | null> {
  const station = plant.station(code);
  if (station === null) return null;
  const defects = await countDefects(db, code, DEFECTS_COUNT);
  const here = new Set(defects.map((defect) => defect.code));
  return {
    station: stationEntryOf(station),
    isOnRoute: isOnAnyRoute(plant, station.operation),
    isQualified: isQualifiedFor(plant, station, principal),
    products: productsAt(plant, station),
    slots: slotPictures(plant, code, await findStandingItems(db, code)),
    defects,
    defectsElsewhere: defectsOfPlant.filter((defect) => !here.has(defect)),
    fits: await findRecentFits(db, code),
    readings: await findUsualReadings(db, code),
    joins: await findRecentJoins(db, code),
    recent: await findRecentResults(db, code, RECENT_COUNT),
  };
}

function isQualifiedFor(plant: Plant, { operation }: StationEntry, principal: Principal): boolean {
  if (principal.kind === 'token') return true;
  return plant.operator(principal.badge)?.operations?.includes(operation) ?? false;
}
