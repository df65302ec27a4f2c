import { judge } from '@/lib/domain/gate/judge';
import type { Known } from '@/lib/domain/gate/known';
import { ATTEMPTS_DEFAULT, routeOf } from '@/lib/domain/plant/plant';
import type { ReplicaUnit } from '@/lib/domain/replica/replica-answer';
import type { ScanPicture, UnitPicture } from '@/lib/domain/station/scan-picture';
import { readLabel } from '@/lib/domain/station/scanned-label';
import { serialOf, startableAs } from '@/lib/domain/station/startable';
import { nextStep, offRouteKey, openFailure, owedSteps } from '@/lib/domain/units/progress';

const NO_EVENT = { id: 'ffffffff-ffff-7fff-bfff-ffffffffffff', at: '2000-01-01T00:00:00Z' };

/** What a scanned code names, as far as a replica knows; items and containers it does not look up. */
export function replicaScan(
  known: Known,
  asked: { code: string; station: string; kept: ReplicaUnit | null },
): ScanPicture {
  const { code, station } = asked;
  const unit = replicaUnitPicture(known, asked);
  return {
    code,
    unit,
    item: null,
    container: null,
    isContainerLike: false,
    label: unit === null ? readLabel(known.plant, code) : null,
    isPart: known.plant.namesPart(code),
    serialOf: serialOf(known.plant, code),
    startable: unit === null ? startableAs(known.plant, station, code) : [],
  };
}

/** A unit as a station needs to know it; what was fitted, what it lacks and which defects it had stand in its history, with the server. */
function replicaUnitPicture(
  known: Known,
  { code: unit, kept }: { code: string; kept: ReplicaUnit | null },
): UnitPicture | null {
  const { plant } = known;
  const state = known.unit(unit);
  if (!state?.isStarted) return null;
  const next = nextStep(unit, state, plant);
  const failure = openFailure(state, plant);
  const route = routeOf(plant.product(state.product, state.revision));
  const failedStep = route.find(({ step }) => step === failure?.step);
  const key = failure === null ? '' : String(failure.step ?? offRouteKey(failure.operation));
  return {
    unit,
    product: state.product,
    revision: state.revision,
    place: null,
    outer: kept?.outer ?? null,
    isSigned: state.isSigned,
    isScrapped: state.isScrapped,
    next: next === null ? null : { operation: next.operation, step: next.step },
    steps: owedSteps(unit, state, plant).map(({ step, operation }) => ({
      step,
      operation,
      last: state.steps[String(step)]?.last ?? null,
    })),
    failure: failure && {
      ...failure,
      tries: state.steps[key]?.tries ?? 0,
      attempts: failedStep?.attempts ?? ATTEMPTS_DEFAULT,
      defects: [],
    },
    fitted: [],
    open: [],
    joined: [],
    holds: (kept?.holds ?? []).map((hold) => ({ ...hold, automatic: false, at: NO_EVENT.at })),
    cautions: [],
    signing: judge({ ...NO_EVENT, type: 'unit.signed', body: { unit, meaning: '-' } }, known),
  };
}
