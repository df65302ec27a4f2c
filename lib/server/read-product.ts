import { type ProductPicture, productPicture } from '@/lib/domain/station/product-picture';
import { readPlant } from '@/lib/server/read-plant';

/** A product revision's BOM as stations use it; null when the plant has no such revision. */
export async function readProduct(product: string, revision: string): Promise<ProductPicture | null> {
  const entry = (await readPlant()).product(product, revision);
  return entry === null ? null : productPicture(entry);
}
