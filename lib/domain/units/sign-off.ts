import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { Plant } from '@/lib/domain/plant/plant';
import { extendUnit, foldUnit } from '@/lib/domain/units/fold-unit';
import { nextStep, stepFor } from '@/lib/domain/units/progress';
import type { UnitState } from '@/lib/domain/units/unit-state';

/** A step of a route, as people name it. */
type NamedStep = { step: number; operation: string };

/** A sign-off that counts: what was owed when it was given, and which steps were passed since. */
export type SignOff = {
  at: string;
  by: string | null;
  meaning: string;
  /** The step that was owed next at the sign-off; null when every step was passed. */
  before: NamedStep | null;
  since: NamedStep[];
};

/** The last sign-off of a unit that has not lapsed, from all its events that count, in order; else null. */
export function signOffOf(unit: string, events: readonly LoggedEvent[], plant: Plant): SignOff | null {
  const index = events.findLastIndex((event) => event.type === 'unit.signed');
  const signing = events[index];
  if (signing?.type !== 'unit.signed') return null;
  if (!foldUnit(unit, events, plant).isSigned) return null;
  let state = foldUnit(unit, events.slice(0, index), plant);
  const next = nextStep(unit, state, plant);
  const since: NamedStep[] = [];
  for (const event of events.slice(index)) {
    const step = passedStep(unit, state, event, plant);
    if (step !== null) since.push(step);
    state = extendUnit(unit, state, event, plant);
  }
  return {
    at: signing.at,
    by: signing.operator ?? null,
    meaning: signing.body.meaning,
    before: next && { step: next.step, operation: next.operation },
    since,
  };
}

function passedStep(unit: string, state: UnitState, event: LoggedEvent, plant: Plant): NamedStep | null {
  if (event.type !== 'unit.processed' || event.body.result !== 'pass') return null;
  const operation = plant.station(event.station)?.operation;
  const step = operation === undefined ? null : stepFor({ unit, state, plant, operation });
  return step && { step: step.step, operation: step.operation };
}
