import type { ProductCode } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';

/** Boards on one panel. */
export const PANEL_SIZE: Readonly<Record<ProductCode, number>> = { WX4: 2, PSU2: 4 };

/** What a line starts every working day: panels of a product, evenly from one hour (UTC) to another. */
export type DayPlanRow = {
  line: LineCode;
  product: ProductCode;
  panels: number;
  fromHours: number;
  toHours: number;
};

/** Line 1 builds the gateway all day; line 2 builds power supplies first and then gateways. */
export const DAY_PLAN: readonly DayPlanRow[] = [
  { line: 'L1', product: 'WX4', panels: 90, fromHours: 6.6, toHours: 18.3 },
  { line: 'L2', product: 'PSU2', panels: 57, fromHours: 6.7, toHours: 13.6 },
  { line: 'L2', product: 'WX4', panels: 21, fromHours: 14.2, toHours: 18.3 },
];

/** Boards that are started every working day. */
export const UNITS_A_DAY: Readonly<Record<ProductCode, number>> = {
  WX4: unitsOf('WX4'),
  PSU2: unitsOf('PSU2'),
};

function unitsOf(product: ProductCode): number {
  return DAY_PLAN.filter((row) => row.product === product).reduce(
    (sum, { panels }) => sum + panels * PANEL_SIZE[product],
    0,
  );
}
