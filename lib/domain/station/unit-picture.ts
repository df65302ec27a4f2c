import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { Place } from '@/lib/domain/genealogy/answer';
import { ATTEMPTS_DEFAULT, type Plant, routeOf } from '@/lib/domain/plant/plant';
import type { OpenDefect, UnitPicture } from '@/lib/domain/station/scan-picture';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import { partPositions } from '@/lib/domain/units/part-positions';
import { nextStep, offRouteKey, openFailure, owedSteps } from '@/lib/domain/units/progress';
import type { UnitState } from '@/lib/domain/units/unit-state';

/** What a unit's picture is made of beside its own events. */
export type UnitSurroundings = {
  plant: Plant;
  place: Place;
  outer: string | null;
  joined: { unit: string; position: string }[];
  holds: UnitPicture['holds'];
  cautions: UnitPicture['cautions'];
  signing: Refusal[];
};

/** A unit as a station needs to know it, from its events that count, in order. */
export function unitPicture(
  unit: string,
  history: readonly LoggedEvent[],
  surroundings: UnitSurroundings,
): UnitPicture {
  const { plant, ...around } = surroundings;
  const state = foldUnit(unit, history, plant);
  const next = nextStep(unit, state, plant);
  return {
    unit,
    product: state.product,
    revision: state.revision,
    isSigned: state.isSigned,
    isScrapped: state.isScrapped,
    next: next === null ? null : { operation: next.operation, step: next.step },
    steps: owedSteps(unit, state, plant).map(({ step, operation }) => ({
      step,
      operation,
      last: state.steps[String(step)]?.last ?? null,
    })),
    failure: failureOf(state, history, plant),
    ...partPositions(history),
    ...around,
  };
}

function failureOf(state: UnitState, history: readonly LoggedEvent[], plant: Plant): UnitPicture['failure'] {
  const failure = openFailure(state, plant);
  if (failure === null) return null;
  const { operation, step } = failure;
  const key = step === null ? offRouteKey(operation) : String(step);
  const route = routeOf(plant.product(state.product, state.revision));
  return {
    operation,
    step,
    tries: state.steps[key]?.tries ?? 0,
    attempts: route.find((each) => each.step === step)?.attempts ?? ATTEMPTS_DEFAULT,
    defects: lastDefects(history, plant, operation),
  };
}

function lastDefects(history: readonly LoggedEvent[], plant: Plant, operation: string): OpenDefect[] {
  const last = history.findLast(
    (event) =>
      event.type === 'unit.processed' &&
      event.body.result === 'fail' &&
      plant.station(event.station)?.operation === operation,
  );
  if (last?.type !== 'unit.processed') return [];
  return (last.body.defects ?? []).map(({ code, position = null, note = null }) => ({
    code,
    position,
    note,
  }));
}
