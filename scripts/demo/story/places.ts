import { type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import type { PlaceKind } from '@/lib/domain/genealogy/answer';
import { foldContainer } from '@/lib/domain/packing/fold-container';
import { indexPlant } from '@/lib/domain/plant/plant';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { foldUnit } from '@/lib/domain/units/fold-unit';

/** Where a unit is, and whom it was shipped to. */
export type DemoPlace = { kind: PlaceKind; customer: string | null };

/** Where units are when the demo ends. For units that are in no other one, and containers at most one deep. */
export function placesOf(
  plan: { plant: PlantFile; events: readonly LoggedEvent[] },
  units: ReadonlySet<string>,
): Map<string, DemoPlace> {
  const plant = indexPlant(plan.plant);
  const histories = new Map([...units].map((unit): [string, LoggedEvent[]] => [unit, []]));
  const containers = new Map<string, LoggedEvent[]>();
  for (const event of plan.events) {
    histories.get(subjectUnit(event) ?? '')?.push(event);
    if (!event.type.startsWith('container.') || !('container' in event.body)) continue;
    const { container } = event.body;
    containers.set(container, [...(containers.get(container) ?? []), event]);
  }
  const shippedTo = (container: string): string | null => {
    const { inside, shipping } = foldContainer(containers.get(container) ?? []);
    return shipping?.customer ?? (inside === null ? null : shippedTo(inside));
  };
  return new Map(
    [...histories].map(([unit, history]): [string, DemoPlace] => {
      const state = foldUnit(unit, history, plant);
      if (state.isScrapped) return [unit, { kind: 'scrapped', customer: null }];
      const customer = state.placing === 'container' ? shippedTo(state.container ?? '') : null;
      return [unit, { kind: customer === null ? (state.placing ?? 'station') : 'shipped', customer }];
    }),
  );
}
