import type { Plant } from '@/lib/domain/plant/plant';
import type { StationEntry } from '@/lib/domain/plant/plant-file';
import type { ProductName } from '@/lib/domain/station/station-picture';

/** Products that come to a station: their route has its operation, or their BOM names one of its slots. */
export function productsAt(plant: Plant, { code, operation }: StationEntry): ProductName[] {
  return (plant.file.products ?? [])
    .filter(
      (product) =>
        (product.route ?? []).some((step) => step.operation === operation) ||
        plant.suppliesAt(code, product).length > 0,
    )
    .map(({ number, revision }) => ({ product: number, revision }));
}
