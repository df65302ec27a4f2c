import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { DEMO_PEOPLE } from '@/scripts/demo/people';
import { PARTS } from '@/scripts/demo/plant/parts';
import { PSU2, WX4 } from '@/scripts/demo/plant/products';
import { STATIONS } from '@/scripts/demo/plant/stations';

/** Code of the demo's site; a plant with it is the demo's. */
export const DEMO_SITE = 'TVE';

/** The plant file of Tarn Valley Electronics, an invented plant. */
export function demoPlant(): PlantFile {
  return {
    site: { code: DEMO_SITE, name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
    parts: PARTS.map(({ number, description, floorLife, attrition }) => ({
      number,
      ...(description === undefined ? {} : { description }),
      ...(floorLife === undefined ? {} : { floorLife }),
      ...(attrition === undefined ? {} : { attrition }),
    })),
    stations: [...STATIONS],
    products: [WX4, PSU2],
    operators: DEMO_PEOPLE.map(({ badge, name, operations }) => ({
      badge,
      name,
      operations: [...operations],
    })),
  };
}
