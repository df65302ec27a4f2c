import { type History, historyOf, liveOf, productOf, recordedFrom } from '@/tests/reference/model/history';
import { joinsOf, pathsOutward } from '@/tests/reference/model/joins';
import { compareCodes, instantUs } from '@/tests/reference/model/order';
import { containersAround, type Picked, placeOf } from '@/tests/reference/model/places';
import { allDraws, whereUsed } from '@/tests/reference/model/where-used';
import type { PlantFile, WireEvent } from '@/tests/reference/model/wire-types';

/** A condition as the wire carries it. */
export type WireCondition = { must: boolean; kind: string } & Partial<
  Record<
    | 'item'
    | 'lot'
    | 'part'
    | 'station'
    | 'operation'
    | 'operator'
    | 'from'
    | 'to'
    | 'result'
    | 'code'
    | 'position'
    | 'change'
    | 'product'
    | 'revision'
    | 'boardLot'
    | 'order'
    | 'panel'
    | 'place'
    | 'container'
    | 'shipment'
    | 'customer',
    string
  >
>;

/** Whether what a condition says is so: proven of the unit itself, proven only of one inside it, not excluded, or not so. */
type Finding = 'own' | 'inner' | 'possible' | 'no';

/** One condition's counts, counted by hand. */
type Counts = {
  own: { certain: number; possible: number };
  after: { certain: number; possible: number } | null;
  removed: number | null;
  spared: number;
};

export type NarrowedByHand = {
  certain: string[];
  possible: string[];
  /** For each unit of the answer, the numbers of the conditions that leave it only possible. */
  doubts: Record<string, number[]>;
  conditions: Counts[];
};

/** The narrowing of wire conditions by looking at every unit, every condition and every event: no index, no SQL. */
export function narrower(
  plant: PlantFile,
  events: readonly WireEvent[],
  picked: Picked,
): (conditions: readonly WireCondition[]) => NarrowedByHand {
  const history = historyOf(plant, events.map(recordedFrom));
  const draws = allDraws(history);
  const joins = joinsOf(history);
  const units = [...unitsOf(history)].sort(compareCodes);

  function findingsOf(condition: WireCondition): Map<string, Finding> {
    if (condition.kind === 'used') return usedFindings(condition);
    if (['product', 'place', 'packed'].includes(condition.kind))
      return new Map(units.map((unit) => [unit, identityFinding(condition, unit)]));
    return workFindings(condition);
  }

  function usedFindings(wanted: WireCondition): Map<string, Finding> {
    const { must: _, kind: __, place: ___, ...query } = wanted;
    const rows = whereUsed(history, draws, query, picked).units;
    const found = new Set(rows.map(({ unit }) => unit));
    return new Map(
      rows.map(({ unit, certainty }) => {
        const hasInner = joins.some((join) => join.into === unit && found.has(join.unit));
        return [unit, certainty === 'possible' ? 'possible' : hasInner ? 'inner' : 'own'];
      }),
    );
  }

  function workFindings(condition: WireCondition): Map<string, Finding> {
    const found = new Map<string, Finding>();
    const strongest = (unit: string, finding: Finding) => {
      const order: Finding[] = ['no', 'possible', 'inner', 'own'];
      const before = found.get(unit) ?? 'no';
      if (order.indexOf(finding) > order.indexOf(before)) found.set(unit, finding);
    };
    if (condition.kind === 'started')
      for (const unit of units) if (isUnstarted(unit)) strongest(unit, 'possible');
    for (const { event, key, doubtUs } of history.live) {
      if (!isWanted(event, condition) || !('unit' in event.body)) continue;
      const from = condition.from === undefined ? -Infinity : instantUs(condition.from);
      const to = condition.to === undefined ? Infinity : instantUs(condition.to);
      if (key.us + doubtUs < from || key.us - doubtUs > to) continue;
      const isCertain = key.us - doubtUs >= from && key.us + doubtUs <= to;
      const { unit } = event.body;
      strongest(unit, isCertain ? 'own' : 'possible');
      for (const outer of pathsOutward(joins, unit, { from: key, to: null }))
        strongest(outer.unit, isCertain ? 'inner' : 'possible');
    }
    return found;
  }

  function isWanted(event: WireEvent, wanted: WireCondition): boolean {
    const operation = plant.stations.find(({ code }) => code === event.station)?.operation;
    if (wanted.station !== undefined && event.station !== wanted.station) return false;
    if (wanted.operation !== undefined && operation !== wanted.operation) return false;
    if (wanted.operator !== undefined && event.operator !== wanted.operator) return false;
    switch (wanted.kind) {
      case 'processed':
        return (
          event.type === 'unit.processed' &&
          (wanted.result === undefined || event.body.result === wanted.result)
        );
      case 'defect':
        return (
          event.type === 'unit.processed' &&
          (event.body.defects ?? []).some(
            ({ code, position }) =>
              (wanted.code ?? code) === code &&
              (wanted.position === undefined || wanted.position === position),
          )
        );
      case 'repaired':
        return (
          (event.type === 'part.removed' || event.type === 'part.installed') &&
          (wanted.change === undefined || event.type === `part.${wanted.change}`) &&
          (wanted.position === undefined || event.body.position === wanted.position)
        );
      case 'started':
        return (
          event.type === 'unit.started' &&
          (wanted.boardLot === undefined || event.body.boardLot === wanted.boardLot) &&
          (wanted.order === undefined || event.body.order === wanted.order) &&
          (wanted.panel === undefined || event.body.panel === wanted.panel)
        );
      default:
        throw new Error(`not a condition on events: ${wanted.kind}`);
    }
  }

  function isUnstarted(unit: string): boolean {
    return productOf(history, unit).product === null;
  }

  function identityFinding(wanted: WireCondition, unit: string): Finding {
    if (wanted.kind === 'product') {
      if (isUnstarted(unit)) return 'possible';
      const { product, revision } = productOf(history, unit);
      return product === wanted.product && (wanted.revision ?? revision) === revision ? 'own' : 'no';
    }
    const place = placeOf(history, unit, picked);
    if (wanted.kind === 'place') {
      if (place?.kind !== wanted.place) return 'no';
      const isThere = place?.kind !== 'station' || (wanted.station ?? place.station) === place.station;
      return isThere ? 'own' : 'no';
    }
    if (place?.kind !== 'container' && place?.kind !== 'shipped') return 'no';
    const { shipment, customer } = place.kind === 'shipped' ? place : { shipment: null, customer: null };
    const isInside =
      wanted.container === undefined || containersAround(history, place.container).includes(wanted.container);
    return isInside &&
      (wanted.shipment ?? shipment) === shipment &&
      (wanted.customer ?? customer) === customer
      ? 'own'
      : 'no';
  }

  return (conditions) => {
    const rows = conditions.map((condition) => ({ ...condition, findings: findingsOf(condition) }));
    const standings = units.map((unit) => ({
      unit,
      marks: rows.map(({ must, findings }) => markOf(must, findings.get(unit) ?? 'no')),
    }));
    const left = standings.filter(({ marks }) => !marks.includes('out'));
    return {
      certain: left.filter(({ marks }) => !marks.includes('doubt')).map(({ unit }) => unit),
      possible: left.filter(({ marks }) => marks.includes('doubt')).map(({ unit }) => unit),
      doubts: Object.fromEntries(
        left.map(({ unit, marks }) => [unit, marks.flatMap((mark, at) => (mark === 'doubt' ? [at] : []))]),
      ),
      conditions: rows.map(({ must }, at) => {
        const before = standings.filter(({ marks }) => !marks.slice(0, at).includes('out'));
        const after = before.filter(({ marks }) => marks[at] !== 'out');
        const doubtful = after.filter(({ marks }) => marks.slice(0, at + 1).includes('doubt'));
        const hasBefore = rows.slice(0, at).some((row) => row.must);
        const met = must ? 'in' : 'out';
        return {
          own: {
            certain: standings.filter(({ marks }) => marks[at] === met).length,
            possible: standings.filter(({ marks }) => marks[at] === 'doubt').length,
          },
          after:
            must || hasBefore ? { certain: after.length - doubtful.length, possible: doubtful.length } : null,
          removed: hasBefore ? before.length - after.length : null,
          spared: after.filter(({ marks }) => marks[at] === 'doubt').length,
        };
      }),
    };
  };
}

function markOf(must: boolean, finding: Finding): 'in' | 'doubt' | 'out' {
  if (must) return finding === 'no' ? 'out' : finding === 'possible' ? 'doubt' : 'in';
  return finding === 'no' ? 'in' : finding === 'own' ? 'out' : 'doubt';
}

/** Every unit that an event that counts is about, or that another one went into. */
function unitsOf(history: History): Set<string> {
  const units = new Set(liveOf(history, 'unit.joined').map(({ event }) => event.body.into));
  for (const { event } of history.live) if ('unit' in event.body) units.add(event.body.unit);
  return units;
}
