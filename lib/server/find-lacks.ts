import type { Queryable } from '@/lib/data/pool';
import { findUsualJoins } from '@/lib/data/station/find-usual-joins';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { Plant } from '@/lib/domain/plant/plant';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';
import { freeInnerPositions, lacksOf } from '@/lib/domain/units/unit-lacks';

/** What a unit lacks; what is usual where it passed is looked up only while a position for a sub-assembly is free. */
export async function findLacks(
  db: Queryable,
  unit: string,
  {
    history,
    plant,
    stays,
  }: {
    history: readonly LoggedEvent[];
    plant: Plant;
    stays: readonly { position: string; until: string | null }[];
  },
): Promise<UnitCaution[]> {
  const { product, revision } = foldUnit(unit, history, plant);
  const isAsked = freeInnerPositions(plant.product(product, revision), stays).length > 0;
  const usual = isAsked ? await findUsualJoins(db, lastPasses(history)) : [];
  return lacksOf(unit, history, { plant, stays, usual });
}

/** The last pass at each station. */
function lastPasses(history: readonly LoggedEvent[]): { station: string; at: string }[] {
  const passes = history.flatMap((event) =>
    event.type === 'unit.processed' && event.body.result === 'pass'
      ? [{ station: event.station, at: event.at }]
      : [],
  );
  return [...new Map(passes.map((pass) => [pass.station, pass])).values()];
}
