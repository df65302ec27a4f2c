import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { Plant } from '@/lib/domain/plant/plant';
import type { ProductEntry } from '@/lib/domain/plant/plant-file';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import { partPositions } from '@/lib/domain/units/part-positions';
import { isFinished } from '@/lib/domain/units/progress';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';

/** What was and is in a unit: the positions of its sub-assemblies; `until` is null while one stands there. */
type Stays = readonly { position: string; until: string | null }[];

/** Positions of a product where a sub-assembly belongs and none stands now, with the products that go there. */
export function freeInnerPositions(
  product: ProductEntry | null,
  stays: Stays,
): { position: string; products: string[] }[] {
  const taken = new Set(stays.filter(({ until }) => until === null).map(({ position }) => position));
  const free = new Map<string, string[]>();
  for (const { product: inner, positions = [] } of product?.bom ?? [])
    for (const position of inner === undefined ? [] : positions)
      if (inner !== undefined && !taken.has(position))
        free.set(position, [...(free.get(position) ?? []), inner]);
  return [...free].map(([position, products]) => ({ position, products }));
}

/**
 * What a unit lacks, from its events that count, in order. No plant file says where a sub-assembly goes in, the record
 * does: one is missing when it was usual to put it in where the unit has passed (`usual`, product numbers), when one
 * stood at its position before, or when every step is passed. Scrap lacks nothing any more.
 */
export function lacksOf(
  unit: string,
  history: readonly LoggedEvent[],
  { plant, stays, usual }: { plant: Plant; stays: Stays; usual: readonly string[] },
): UnitCaution[] {
  const state = foldUnit(unit, history, plant);
  if (state.isScrapped) return [];
  const isDone = isFinished(unit, state, plant);
  const missing = freeInnerPositions(plant.product(state.product, state.revision), stays).filter(
    ({ position, products }) =>
      isDone ||
      products.some((product) => usual.includes(product)) ||
      stays.some((stay) => stay.position === position),
  );
  return [
    ...missing.map(({ position, products }) => ({
      what: 'missing_inner' as const,
      product: products.join(' / '),
      position,
    })),
    ...partPositions(history).open.map((position) => ({ what: 'empty_position' as const, position })),
  ];
}
