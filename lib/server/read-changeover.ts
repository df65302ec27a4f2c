import { loadPlant } from '@/lib/data/plant/load-plant';
import { findStandingItems } from '@/lib/data/station/find-standing-items';
import { onSnapshot } from '@/lib/data/transaction';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import { productsAt } from '@/lib/domain/station/products-at';
import { slotPictures } from '@/lib/domain/station/slot-picture';
import { stationEntryOf } from '@/lib/domain/station/station-entry';
import { database } from '@/lib/server/database';

/** The slots of a station as a material handler changes them; null when there is no such station. */
export function readChangeover(code: string): Promise<ChangeoverPicture | null> {
  return onSnapshot(database().pool, async (db) => {
    const { plant } = await loadPlant(db);
    const station = plant.station(code);
    if (station === null) return null;
    return {
      station: stationEntryOf(station),
      slots: slotPictures(plant, code, await findStandingItems(db, code)),
      products: productsAt(plant, station),
    };
  });
}
