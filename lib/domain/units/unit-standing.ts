import type { Result } from '@/lib/domain/events/vocabulary';
import { ATTEMPTS_DEFAULT, type Plant } from '@/lib/domain/plant/plant';
import { nextStep, openFailure, owedSteps } from '@/lib/domain/units/progress';
import type { UnitState } from '@/lib/domain/units/unit-state';

/** A step that a unit owes, with its last result, or null before the first; `tries` counts since the last pass. */
export type StepStanding = {
  step: number;
  operation: string;
  isSample: boolean;
  last: Result | null;
  tries: number;
  attempts: number;
};

/** How far a unit has come on its route. */
export type UnitStanding = {
  steps: StepStanding[];
  next: { step: number; operation: string } | null;
  failedAt: string | null;
  isStarted: boolean;
  isSigned: boolean;
  isScrapped: boolean;
};

/** Tells how far a unit has come from its state. */
export function unitStanding(unit: string, state: UnitState, plant: Plant): UnitStanding {
  const next = nextStep(unit, state, plant);
  return {
    steps: owedSteps(unit, state, plant).map(({ step, operation, sample, attempts = ATTEMPTS_DEFAULT }) => {
      const record = state.steps[String(step)];
      return {
        step,
        operation,
        isSample: sample !== undefined,
        last: record?.last ?? null,
        tries: record?.tries ?? 0,
        attempts,
      };
    }),
    next: next && { step: next.step, operation: next.operation },
    failedAt: openFailure(state, plant)?.operation ?? null,
    isStarted: state.isStarted,
    isSigned: state.isSigned,
    isScrapped: state.isScrapped,
  };
}
