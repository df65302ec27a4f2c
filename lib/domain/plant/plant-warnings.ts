import type { Plant } from '@/lib/domain/plant/plant';

/** Something in a plant file that is allowed but probably not meant; the words are in the message catalogue. */
export type PlantWarning = {
  code:
    | 'part_not_listed'
    | 'product_not_listed'
    | 'station_not_listed'
    | 'slot_not_listed'
    | 'operation_without_station';
  pointer: string;
  name: string;
};

/** What a plant names without saying what it is. */
export function plantWarnings(plant: Plant): PlantWarning[] {
  const { parts = [], stations = [], products = [] } = plant.file;
  const partNumbers = new Set(parts.map((part) => part.number));
  const productNumbers = new Set(products.map((product) => product.number));
  const operations = new Set(stations.map((station) => station.operation));
  const warnings: PlantWarning[] = [];
  products.forEach((product, index) => {
    const base = `/products/${index}`;
    product.route?.forEach(({ operation }, at) => {
      if (!operations.has(operation))
        warnings.push({
          code: 'operation_without_station',
          pointer: `${base}/route/${at}/operation`,
          name: operation,
        });
    });
    product.bom?.forEach(({ part, product: inner, station, slot }, at) => {
      const line = `${base}/bom/${at}`;
      if (part !== undefined && !partNumbers.has(part))
        warnings.push({ code: 'part_not_listed', pointer: `${line}/part`, name: part });
      if (inner !== undefined && !productNumbers.has(inner))
        warnings.push({ code: 'product_not_listed', pointer: `${line}/product`, name: inner });
      if (station === undefined || slot === undefined) return;
      if (plant.station(station) === null)
        warnings.push({ code: 'station_not_listed', pointer: `${line}/station`, name: station });
      else if (plant.slotHolds(station, slot) === null)
        warnings.push({ code: 'slot_not_listed', pointer: `${line}/slot`, name: slot });
    });
  });
  return warnings;
}
