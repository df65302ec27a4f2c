import type { Queryable } from '@/lib/data/pool';
import type { Plant } from '@/lib/domain/plant/plant';
import type { PlantFile } from '@/lib/domain/plant/plant-file';

/** Keeps a new version of the plant file. */
export async function insertPlantVersion(db: Queryable, file: PlantFile, recordedBy: string): Promise<void> {
  await db.query('insert into plant.version (file, recorded_by) values ($1::jsonb, $2)', [
    JSON.stringify(file),
    recordedBy,
  ]);
}

/** Makes the slots and the BOM's supplies again, as answers join them; all of them, since a plant file is small. */
export async function refreshPlantTables(db: Queryable, plant: Plant): Promise<void> {
  const stations = plant.file.stations ?? [];
  const slots = stations.flatMap(({ code, slots: declared = [] }) =>
    declared.map(({ name, holds }) => ({ station: code, slot: name, holds })),
  );
  const supplies = (plant.file.products ?? []).flatMap((product) => {
    const named = new Set(
      (product.bom ?? []).flatMap((line) => (line.station === undefined ? [] : [line.station])),
    );
    return [...named].flatMap((station) =>
      plant.suppliesAt(station, product).map(({ slot, positions }) => ({
        product: product.number,
        revision: product.revision,
        station,
        slot,
        positions,
      })),
    );
  });
  await db.query('delete from read.plant_slot');
  await db.query('delete from read.bom_slot');
  await db.query(
    `insert into read.plant_slot (station, slot, holds)
     select station, slot, holds from jsonb_to_recordset($1::jsonb) as r(station text, slot text, holds text)`,
    [JSON.stringify(slots)],
  );
  await db.query(
    `insert into read.bom_slot (product, revision, station, slot, positions)
     select product, revision, station, slot, positions
     from jsonb_to_recordset($1::jsonb) as r(product text, revision text, station text, slot text, positions text[])`,
    [JSON.stringify(supplies)],
  );
}
