import type { EventOf } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { ATTEMPTS_DEFAULT, type Plant } from '@/lib/domain/plant/plant';
import { isFinished, offRouteKey, stepFor } from '@/lib/domain/units/progress';
import { UNSEEN_UNIT, type UnitState } from '@/lib/domain/units/unit-state';

type UnitProduct = Pick<UnitState, 'product' | 'revision' | 'isStarted'>;

/**
 * A unit's state from all its events that count, in order (by time, ties by id) and without voided ones.
 * The product is that of the last start, whatever came before it: a result may be recorded before its start.
 */
export function foldUnit(unit: string, events: readonly LoggedEvent[], plant: Plant): UnitState {
  let state: UnitState = { ...UNSEEN_UNIT, ...productOf(events) };
  for (const event of events)
    state =
      event.type === 'unit.started' ? placed(unit, state, plant) : extendUnit(unit, state, event, plant);
  return state;
}

/** What a unit is, from the same events. */
export function productOf(events: readonly LoggedEvent[]): UnitProduct {
  const start = events.findLast((event) => event.type === 'unit.started');
  return start === undefined ? UNSEEN_UNIT : startedAs(start);
}

function startedAs({ body: { product, revision } }: EventOf<'unit.started'>): UnitProduct {
  return { product, revision, isStarted: true };
}

/** The state after one more event that comes last in order; a start that changes the product needs a new fold. */
export function extendUnit(unit: string, state: UnitState, event: LoggedEvent, plant: Plant): UnitState {
  switch (event.type) {
    case 'unit.started':
      return placed(unit, { ...state, ...startedAs(event) }, plant);
    case 'unit.processed':
      return settle(unit, withResult(unit, state, event, plant), plant);
    case 'unit.signed':
      return { ...state, isSigned: true };
    case 'unit.scrapped':
      return { ...state, isScrapped: true };
    case 'unit.packed':
      return { ...state, placing: 'container', container: event.body.container };
    case 'unit.unpacked':
      return { ...state, placing: 'stock', container: null };
    case 'unit.returned':
      // What was signed has been out of the house since: it must be signed off again before it is packed.
      return { ...state, placing: 'returned', container: null, isSigned: false };
    default:
      return state;
  }
}

function withResult(
  unit: string,
  state: UnitState,
  event: EventOf<'unit.processed'>,
  plant: Plant,
): UnitState {
  const base: UnitState = { ...state, placing: 'station', container: null, lastStation: event.station };
  const operation = plant.station(event.station)?.operation;
  if (operation === undefined) return base;
  const step = stepFor({ unit, state, plant, operation });
  const key = step === null ? offRouteKey(operation) : String(step.step);
  const tries = event.body.result === 'pass' ? 0 : (state.steps[key]?.tries ?? 0) + 1;
  const isExhausted = tries >= (step?.attempts ?? ATTEMPTS_DEFAULT);
  return {
    ...base,
    steps: { ...state.steps, [key]: { last: event.body.result, tries } },
    exhausted: isExhausted ? [...state.exhausted, event.id] : state.exhausted,
  };
}

function placed(unit: string, state: UnitState, plant: Plant): UnitState {
  return settle(unit, { ...state, placing: 'station', container: null }, plant);
}

function settle(unit: string, state: UnitState, plant: Plant): UnitState {
  return isFinished(unit, state, plant) ? { ...state, placing: 'stock' } : state;
}
