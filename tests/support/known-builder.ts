import type { ContainerFacts, ItemFacts, Known, OpenHold } from '@/lib/domain/gate/known';
import { indexPlant } from '@/lib/domain/plant/plant';
import { type PlantFile, plantFileSchema } from '@/lib/domain/plant/plant-file';
import { UNSEEN_UNIT, type UnitState } from '@/lib/domain/units/unit-state';

/** What a case says of a unit: WX4 revision C, started, unless it says otherwise. */
export type UnitFacts = {
  /** False for a unit that events mention and none started. */
  started?: boolean;
  product?: string;
  revision?: string;
  /** Step numbers, or `~operation` off the route, whose last result was a pass. */
  passed?: (number | string)[];
  /** The same for a fail. */
  failed?: (number | string)[];
  signed?: boolean;
  scrapped?: boolean;
  /** The container that it was packed into. */
  packedIn?: string;
};

/** The world of a case, said as shortly as possible; what is not said does not exist. */
export type Scene = {
  units?: Record<string, UnitFacts>;
  items?: Record<string, Partial<Omit<ItemFacts, 'item'>>>;
  containers?: Record<string, Partial<Omit<ContainerFacts, 'container'>>>;
  /** Slot → item, whatever the station: a case has one station at a time. */
  slots?: Record<string, string>;
  /** Slot → item whose end was spliced away there. */
  grey?: Record<string, string>;
  /** Target as `unit U1`, `item R1`, `lot L1` or `container CT1` → hold. */
  holds?: Record<string, string>;
  /** Inner unit → outer unit. */
  inside?: Record<string, string>;
  /** Hold → whether it was released. */
  placedHolds?: Record<string, 'open' | 'released'>;
  /** Event that broke a rule → whether that was cleared. */
  exceptions?: Record<string, 'open' | 'cleared'>;
  /** What labels were printed of, as `unit W1`. */
  labels?: string[];
  /** Recorded event → type. */
  events?: Record<string, string>;
};

/** A printer with a stencil, a placer with two reel slots and a test bench, and a board with a sub-assembly. */
export const GATE_PLANT: PlantFile = plantFileSchema.parse({
  stations: [
    { code: 'PRINT', operation: 'print', slots: [{ name: 'stencil', holds: 'stencil' }] },
    {
      code: 'PLACE',
      operation: 'place',
      slots: [
        { name: 'F1', holds: 'reel' },
        { name: 'F2', holds: 'reel' },
      ],
    },
    { code: 'TEST', operation: 'test' },
    { code: 'TEST-2', operation: 'test' },
    { code: 'REWORK', operation: 'rework' },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      serialPattern: '^W[0-9]+$',
      route: [
        { step: 10, operation: 'print' },
        { step: 20, operation: 'place' },
        { step: 30, operation: 'test', attempts: 2 },
      ],
      bom: [
        { part: 'C-100N', positions: ['C1', 'C2'], station: 'PLACE', slot: 'F1' },
        { product: 'PSU2', positions: ['A1'] },
      ],
    },
    { number: 'PSU2', revision: 'A', route: [{ step: 10, operation: 'test' }] },
  ],
  operators: [
    { badge: 'op-1', operations: ['print', 'place'] },
    { badge: 'op-2', operations: ['test'] },
  ],
});

const REASON = 'cracks';

/** The record as a scene describes it, for the gate to ask. */
export function knownOf(scene: Scene): Known {
  const {
    labels = [],
    units = {},
    containers = {},
    inside = {},
    slots = {},
    grey = {},
    placedHolds = {},
    exceptions = {},
    events = {},
  } = scene;
  const innerOf = (unit: string): string[] =>
    Object.entries(inside).flatMap(([inner, outer]) => (outer === unit ? [inner, ...innerOf(inner)] : []));
  const containersIn = (container: string): string[] =>
    Object.entries(containers).flatMap(([inner, facts]) =>
      facts.inside === container ? [inner, ...containersIn(inner)] : [],
    );
  return {
    plant: indexPlant(GATE_PLANT),
    unit: (unit) => find(units, unit, stateOf),
    isStartedEver: (unit) => units[unit] !== undefined && (units[unit].started ?? true),
    item: (item) =>
      find(scene.items ?? {}, item, (facts) => ({
        item,
        kind: 'reel',
        part: null,
        lot: null,
        isRetired: false,
        ...facts,
      })),
    container: (container) =>
      find(containers, container, (facts) => ({ container, inside: null, shipment: null, ...facts })),
    slotContents: () => new Map(Object.entries(slots)),
    greyContents: () => new Map(Object.entries(grey)),
    holdsOn: (kind, id): OpenHold[] => {
      const hold = scene.holds?.[`${kind} ${id}`];
      return hold === undefined ? [] : [{ hold, kind, id, reason: REASON }];
    },
    innerUnits: innerOf,
    outerUnit: (unit) => inside[unit] ?? null,
    contentsOf: (container) => {
      const inner = containersIn(container);
      const packed = Object.entries(units).filter(([, { packedIn }]) =>
        [container, ...inner].some((each) => each === packedIn),
      );
      return { containers: inner, units: packed.map(([unit]) => unit) };
    },
    hold: (hold) => find(placedHolds, hold, (state) => ({ isReleased: state === 'released' })),
    exception: (event) => find(exceptions, event, (state) => ({ isCleared: state === 'cleared' })),
    isLabelled: (kind, id) => labels.includes(`${kind} ${id}`),
    eventType: (id) => events[id] ?? null,
  };
}

function find<F, T>(facts: Record<string, F>, key: string, read: (fact: F) => T): T | null {
  const fact = facts[key];
  return fact === undefined ? null : read(fact);
}

function stateOf(facts: UnitFacts): UnitState {
  const { product = 'WX4', revision = 'C', passed = [], failed = [], packedIn = null } = facts;
  return {
    ...UNSEEN_UNIT,
    product,
    revision,
    isStarted: facts.started ?? true,
    steps: Object.fromEntries([
      ...passed.map((step) => [String(step), { last: 'pass', tries: 0 }] as const),
      ...failed.map((step) => [String(step), { last: 'fail', tries: 1 }] as const),
    ]),
    placing: packedIn === null ? 'station' : 'container',
    container: packedIn,
    isSigned: facts.signed ?? false,
    isScrapped: facts.scrapped ?? false,
  };
}
