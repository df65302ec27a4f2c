import { type Plant, routeOf } from '@/lib/domain/plant/plant';
import type { ProductEntry, RouteStep } from '@/lib/domain/plant/plant-file';
import { isPicked } from '@/lib/domain/units/sample';
import type { UnitState } from '@/lib/domain/units/unit-state';

/** Key under which work off the route is kept in `UnitState.steps`. */
export function offRouteKey(operation: string): string {
  return `~${operation}`;
}

/** The steps that a unit owes, in order: every step without sample, and sampled ones it was picked for or went through. */
export function owedSteps(unit: string, state: UnitState, plant: Plant): RouteStep[] {
  const product = plant.product(state.product, state.revision);
  return product === null ? [] : routeOf(product).filter((step) => isOwed(unit, state, product, step));
}

function isOwed(unit: string, state: UnitState, product: ProductEntry, step: RouteStep): boolean {
  return state.steps[String(step.step)] !== undefined || isPicked(unit, product, step);
}

/** Whether the last result at a step was a pass. */
export function isPassed(state: UnitState, step: RouteStep): boolean {
  return state.steps[String(step.step)]?.last === 'pass';
}

/** The first owed step that is not passed, or null when nothing is owed any more. */
export function nextStep(unit: string, state: UnitState, plant: Plant): RouteStep | null {
  const product = plant.product(state.product, state.revision);
  if (product === null) return null;
  // Whether a sampled step is owed takes a hash: it is asked last.
  return (
    routeOf(product).find((step) => !isPassed(state, step) && isOwed(unit, state, product, step)) ?? null
  );
}

/** Whether every step that is owed has passed last; a unit without a route never is. */
export function isFinished(unit: string, state: UnitState, plant: Plant): boolean {
  return nextStep(unit, state, plant) === null && owedSteps(unit, state, plant).length > 0;
}

/** The operation whose last result is a fail, with its step when it is on the route; null when nothing is open. */
export function openFailure(
  state: UnitState,
  plant: Plant,
): { operation: string; step: number | null } | null {
  for (const step of routeOf(plant.product(state.product, state.revision)))
    if (state.steps[String(step.step)]?.last === 'fail')
      return { operation: step.operation, step: step.step };
  const offRoute = Object.keys(state.steps).find(
    (key) => key.startsWith('~') && state.steps[key]?.last === 'fail',
  );
  return offRoute === undefined ? null : { operation: offRoute.slice(1), step: null };
}

/**
 * The step that a result at an operation counts for: the earliest step of that operation that is due; if none is due,
 * the latest one already passed; else the first. Null for an operation that is not on the route.
 */
export function stepFor(entry: {
  unit: string;
  state: UnitState;
  plant: Plant;
  operation: string;
}): RouteStep | null {
  const { unit, state, plant, operation } = entry;
  const product = plant.product(state.product, state.revision);
  const candidates = routeOf(product).filter((step) => step.operation === operation);
  if (candidates.length < 2) return candidates[0] ?? null;
  const failed = candidates.find((step) => state.steps[String(step.step)]?.last === 'fail');
  if (failed !== undefined) return failed;
  const next = nextStep(unit, state, plant);
  const due = candidates.find((step) => !isPassed(state, step) && (next === null || step.step <= next.step));
  return due ?? candidates.findLast((step) => isPassed(state, step)) ?? candidates[0] ?? null;
}
