import { doubtUs, type LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot } from '@/lib/domain/events/touched';
import type { Certainty, Relation } from '@/lib/domain/genealogy/answer';
import { type Pass, passOf } from '@/lib/domain/genealogy/draw-rows';
import { indexPlant, type Plant } from '@/lib/domain/plant/plant';
import type { DemoPlan } from '@/scripts/demo/plan-demo';
import { type DemoPlace, placesOf } from '@/scripts/demo/story/places';
import { recordedEvents } from '@/scripts/demo/story/recorded-events';

/** A unit that a story's item went into or touched. */
export type StoryUnit = { unit: string; certainty: Certainty; relation: Relation; place: DemoPlace };

/** A stay of the item in a slot, in microseconds, with the doubts about begin and end. */
type Stay = {
  station: string;
  slot: string;
  fromUs: number;
  toUs: number;
  fromDoubtUs: number;
  toDoubtUs: number;
};

type Draw = { certainty: Certainty; positions: readonly string[]; atUs: number };

/**
 * What where-used must answer for a story's item at the end of the demo, in order of serials; worked out from the plan
 * with plain loops. Only for items that stand in slots and whose units are in no other one: those of the stories.
 */
export function unitsThatUsed(plan: DemoPlan, item: string): StoryUnit[] {
  const events = recordedEvents(plan);
  const isMaterial = events.some(
    ({ type, body }) => type === 'item.received' && body.item === item && body.kind === 'reel',
  );
  const draws = drawsFrom({
    events,
    plant: indexPlant(plan.plant),
    stays: staysOf(events, item),
    isMaterial,
  });
  const places = placesOf({ plant: plan.plant, events }, new Set(draws.keys()));
  return [...draws]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([unit, ofUnit]) => ({
      unit,
      certainty: ofUnit.some(({ certainty }) => certainty === 'certain') ? 'certain' : 'possible',
      relation: isMaterial ? relationOf(events, unit, ofUnit) : 'touched',
      place: places.get(unit) ?? { kind: 'station', customer: null },
    }));
}

function staysOf(events: readonly LoggedEvent[], item: string): Stay[] {
  return events.flatMap((mount, index) => {
    if (mount.type !== 'item.mounted' || mount.body.item !== item) return [];
    const { station, body } = mount;
    const end = events.slice(index + 1).find((each) => {
      if (!changesSlot(each) || each.station !== station || each.body.slot !== body.slot) return false;
      return each.type !== 'item.unmounted' || each.body.item === item;
    });
    const toUs = end?.atUs ?? Number.POSITIVE_INFINITY;
    const toDoubtUs = end === undefined ? 0 : doubtUs(end);
    return [{ station, slot: body.slot, fromUs: mount.atUs, toUs, fromDoubtUs: doubtUs(mount), toDoubtUs }];
  });
}

function drawsFrom(history: {
  events: readonly LoggedEvent[];
  plant: Plant;
  stays: readonly Stay[];
  isMaterial: boolean;
}): Map<string, Draw[]> {
  const { events, plant, stays, isMaterial } = history;
  const products = new Map<string, ReturnType<Plant['product']>>();
  const draws = new Map<string, Draw[]>();
  for (const event of events) {
    if (event.type === 'unit.started')
      products.set(event.body.unit, plant.product(event.body.product, event.body.revision));
    if (event.type !== 'unit.processed') continue;
    const { unit } = event.body;
    for (const stay of stays) {
      const certainty = certaintyOf(passOf(event), stay);
      if (certainty === null) continue;
      const supply = plant
        .suppliesAt(stay.station, products.get(unit) ?? null)
        .find(({ slot }) => slot === stay.slot);
      if (isMaterial && supply === undefined) continue;
      const draw: Draw = { certainty, positions: supply?.positions ?? [], atUs: event.atUs };
      draws.set(unit, [...(draws.get(unit) ?? []), draw]);
    }
  }
  return draws;
}

function certaintyOf({ station, lowUs, highUs }: Pass, stay: Stay): Certainty | null {
  if (station !== stay.station) return null;
  const { fromUs, toUs, fromDoubtUs, toDoubtUs } = stay;
  if (lowUs - fromDoubtUs >= fromUs && highUs + toDoubtUs < toUs) return 'certain';
  return highUs + fromDoubtUs >= fromUs && lowUs - toDoubtUs < toUs ? 'possible' : null;
}

function relationOf(events: readonly LoggedEvent[], unit: string, draws: readonly Draw[]): Relation {
  const removals = events.filter(({ type, body }) => type === 'part.removed' && body.unit === unit);
  const isLeft = draws.some(({ positions, atUs }) =>
    positions.some(
      (position) =>
        !removals.some(
          (each) => each.type === 'part.removed' && each.body.position === position && each.atUs > atUs,
        ),
    ),
  );
  return isLeft ? 'contains' : 'formerly';
}
