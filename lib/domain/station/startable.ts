import { type Plant, routeOf } from '@/lib/domain/plant/plant';
import type { ProductEntry } from '@/lib/domain/plant/plant-file';
import { matchesSerialPattern } from '@/lib/domain/plant/serial-pattern';
import type { ProductName } from '@/lib/domain/station/station-picture';

/** Product revisions whose serial pattern a code matches. */
export function serialOf(plant: Plant, code: string): ProductName[] {
  return (plant.file.products ?? [])
    .filter(({ serialPattern }) => serialPattern !== undefined && matchesSerialPattern(serialPattern, code))
    .map(nameOf);
}

/**
 * Product revisions that a new serial may be started as at a station: those whose route begins with its operation, or
 * any where the operation is on nobody's route (serials are marked there). A product without a pattern takes any serial.
 */
export function startableAs(plant: Plant, station: string, serial: string): ProductName[] {
  const operation = plant.station(station)?.operation;
  if (operation === undefined) return [];
  const products = plant.file.products ?? [];
  const isOffRoute = !isOnAnyRoute(plant, operation);
  return products
    .filter((product) => isOffRoute || routeOf(product)[0]?.operation === operation)
    .filter(({ serialPattern }) => serialPattern === undefined || matchesSerialPattern(serialPattern, serial))
    .map(nameOf);
}

/** Whether any product's route has a step of an operation. */
export function isOnAnyRoute(plant: Plant, operation: string): boolean {
  return (plant.file.products ?? []).some((product) =>
    (product.route ?? []).some((step) => step.operation === operation),
  );
}

function nameOf({ number, revision }: ProductEntry): ProductName {
  return { product: number, revision };
}
