import type { Place } from '@/tests/reference/model/answer-types';
import { type History, liveOf, plantProductOf, productOf } from '@/tests/reference/model/history';
import { joinsOf, outermostOf } from '@/tests/reference/model/joins';

/** Whether a sampled step is owed by a unit: the plant's own way of picking, given from outside. */
export type Picked = (unit: string, product: string, revision: string, step: number) => boolean;

/** Where the unit is now, or null when no event ever placed it (or the unit outermost around it). */
export function placeOf(history: History, unit: string, picked: Picked): Place | null {
  return ownPlaceOf(history, outermostOf(joinsOf(history), unit), picked);
}

function ownPlaceOf(history: History, unit: string, picked: Picked): Place | null {
  if (liveOf(history, 'unit.scrapped').some(({ event }) => event.body.unit === unit)) {
    return { kind: 'scrapped' };
  }
  let place: Place | null = null;
  for (const { event } of history.live) {
    switch (event.type) {
      case 'unit.started':
      case 'unit.processed':
        if (event.body.unit === unit) place = routePlaceOf(history, unit, picked);
        break;
      case 'unit.packed':
        if (event.body.unit === unit) place = packedPlaceOf(history, event.body.container);
        break;
      case 'unit.unpacked':
        if (event.body.unit === unit) place = { kind: 'stock' };
        break;
      case 'unit.returned':
        if (event.body.unit === unit) place = { kind: 'returned' };
        break;
      default:
    }
  }
  return place;
}

function routePlaceOf(history: History, unit: string, picked: Picked): Place {
  if (hasPassedEveryOwedStep(history, unit, picked)) return { kind: 'stock' };
  const last = liveOf(history, 'unit.processed').findLast(({ event }) => event.body.unit === unit);
  return { kind: 'station', station: last?.event.station ?? null };
}

function hasPassedEveryOwedStep(history: History, unit: string, picked: Picked): boolean {
  const { product, revision } = productOf(history, unit);
  const route = plantProductOf(history, unit)?.route ?? [];
  if (product === null || revision === null || route.length === 0) return false;
  return route.every(({ step, operation, sample }) => {
    const results = resultsAt(history, unit, operation);
    const owed = sample === undefined || results.length > 0 || picked(unit, product, revision, step);
    return !owed || results.at(-1) === 'pass';
  });
}

function resultsAt(history: History, unit: string, operation: string): ('pass' | 'fail')[] {
  return liveOf(history, 'unit.processed')
    .filter(({ event }) => event.body.unit === unit)
    .filter(({ event }) => operationOf(history, event.station) === operation)
    .map(({ event }) => event.body.result);
}

function operationOf(history: History, station: string | undefined): string | undefined {
  return history.plant.stations.find(({ code }) => code === station)?.operation;
}

/** `container` stays the one that the unit was packed into, whichever one around it was shipped. */
function packedPlaceOf(history: History, container: string): Place {
  for (const around of containersAround(history, container)) {
    const shipped = liveOf(history, 'container.shipped').findLast(
      ({ event }) => event.body.container === around,
    );
    if (shipped === undefined) continue;
    const { shipment, customer } = shipped.event.body;
    return { kind: 'shipped', container, shipment, customer };
  }
  return { kind: 'container', container };
}

/** The container and those now around it, innermost first, each at most once. */
export function containersAround(history: History, container: string): string[] {
  const around: string[] = [];
  let current: string | null = container;
  while (current !== null && !around.includes(current)) {
    around.push(current);
    current = outerContainerOf(history, current);
  }
  return around;
}

function outerContainerOf(history: History, container: string): string | null {
  let into: string | null = null;
  for (const { event } of history.live) {
    if (event.type === 'container.nested' && event.body.container === container) into = event.body.into;
    if (event.type === 'container.unnested' && event.body.container === container) {
      if (event.body.from === into) into = null;
    }
  }
  return into;
}
