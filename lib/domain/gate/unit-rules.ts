import type { Known } from '@/lib/domain/gate/known';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { isFinished, nextStep, openFailure, owedSteps, stepFor } from '@/lib/domain/units/progress';

/** The unit must be known. */
export function unknownUnit(known: Known, unit: string): Refusal[] {
  return known.unit(unit)?.isStarted ? [] : [{ code: 'unknown_unit', unit }];
}

/** Scrap stays scrap. */
export function scrapped(known: Known, unit: string): Refusal[] {
  return known.unit(unit)?.isScrapped ? [{ code: 'scrapped', unit }] : [];
}

/** A packed or shipped unit is not worked on before it is unpacked or returned. */
export function packedOrShipped(known: Known, unit: string): Refusal[] {
  const outermost = outermostOf(known, unit);
  const state = known.unit(outermost);
  if (state?.placing !== 'container' || state.container === null) return [];
  const container = state.container;
  const shipment = known.container(container)?.shipment ?? null;
  return shipment === null
    ? [{ code: 'already_packed', unit, container }]
    : [{ code: 'already_shipped', unit, container, shipment }];
}

/** The unit around a unit that is in no other one. */
export function outermostOf(known: Known, unit: string): string {
  const seen = new Set([unit]);
  let outermost = unit;
  for (
    let outer = known.outerUnit(unit);
    outer !== null && !seen.has(outer);
    outer = known.outerUnit(outer)
  ) {
    seen.add(outer);
    outermost = outer;
  }
  return outermost;
}

/** Nothing that is held goes on. */
export function unitOnHold(known: Known, unit: string): Refusal[] {
  return known
    .holdsOn('unit', unit)
    .map(({ hold, reason }) => ({ code: 'on_hold', kind: 'unit', id: unit, hold, reason }));
}

/** After a fail only the same operation may follow. */
export function failureElsewhere(known: Known, unit: string, operation: string | null): Refusal[] {
  const state = known.unit(unit);
  const failure = state === null ? null : openFailure(state, known.plant);
  if (failure === null || failure.operation === operation) return [];
  return [{ code: 'open_failure', unit, ...failure }];
}

/** A unit comes to a step only when every owed step before it has passed last. */
export function wrongStep(known: Known, unit: string, operation: string): Refusal[] {
  const { plant } = known;
  const state = known.unit(unit);
  if (!state?.isStarted || plant.product(state.product, state.revision) === null) return [];
  const next = nextStep(unit, state, plant);
  const here = stepFor({ unit, state, plant, operation });
  if (here === null)
    return [
      { code: 'not_on_route', unit, operation, ...(next && { step: next.step, expected: next.operation }) },
    ];
  if (next === null || next.step >= here.step) return [];
  return [{ code: 'wrong_step', unit, operation, step: next.step, expected: next.operation }];
}

/** Nothing failed or unfinished is packed or shipped; what is inside a unit counts with it. */
export function unfinished(known: Known, unit: string): Refusal[] {
  const state = known.unit(unit);
  if (state === null) return [];
  const failure = openFailure(state, known.plant);
  if (failure !== null) return [{ code: 'open_failure', unit, ...failure }];
  const next = nextStep(unit, state, known.plant);
  if (next !== null) return [{ code: 'unfinished', unit, step: next.step, expected: next.operation }];
  const isRouteless = owedSteps(unit, state, known.plant).length === 0;
  return isRouteless || isFinished(unit, state, known.plant) ? [] : [{ code: 'unfinished', unit }];
}

/** What leaves must be signed off. */
export function unsigned(known: Known, unit: string): Refusal[] {
  return known.unit(unit)?.isSigned ? [] : [{ code: 'unsigned', unit }];
}

/** Everything that must hold of a unit before it is packed, and again before its container is shipped. */
export function notReadyToLeave(known: Known, unit: string): Refusal[] {
  const all = [unit, ...known.innerUnits(unit)];
  return [
    ...all.flatMap((each) => scrapped(known, each)),
    ...all.flatMap((each) => unitOnHold(known, each)),
    ...all.flatMap((each) => unfinished(known, each)),
    ...unsigned(known, unit),
  ];
}
