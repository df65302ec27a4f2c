import type { ItemKind } from '@/lib/domain/events/vocabulary';
import type {
  BomLine,
  OperatorEntry,
  PlantFile,
  ProductEntry,
  RouteStep,
  StationEntry,
} from '@/lib/domain/plant/plant-file';

/** Results allowed at a step before the unit is held, where the route does not say. */
export const ATTEMPTS_DEFAULT = 3;

/** What a slot supplies to a product revision: the parts the BOM allows there and the positions they go to. */
export type SlotSupply = { slot: string; parts: string[]; positions: string[] };

/** The plant file with its look-ups; made once for each version of the plant. */
export type Plant = {
  file: PlantFile;
  station(code: string): StationEntry | null;
  product(number: string | null, revision: string | null): ProductEntry | null;
  operator(badge: string): OperatorEntry | null;
  /** Whether counts are weighed, or devices named that scan changes: without both no answer looks for missing records. */
  weighsOrOwes: boolean;
  /** Whether counts of any part are weighed. */
  weighs: boolean;
  /** Whether the plant file names a part: in its list of parts, or in any BOM. */
  namesPart(part: string): boolean;
  /** Share of a part's use that may be lost at pick-up; null where the plant does not say, and nothing is weighed. */
  attritionOf(part: string): number | null;
  /** Declared kind of a slot, or null for a slot that the plant does not know. */
  slotHolds(station: string, slot: string): ItemKind | null;
  /** Slots of a station that the BOM of a product revision names. */
  suppliesAt(station: string, product: ProductEntry | null): SlotSupply[];
  /** Parts that any BOM allows in a slot; empty when no BOM names it. */
  partsAllowedIn(station: string, slot: string): Set<string>;
};

const keyOf = (...words: (string | null)[]) => JSON.stringify(words);

// Every event of a unit asks for its product's route, several times over: it is sorted once.
const routes = new WeakMap<ProductEntry, readonly RouteStep[]>();

/** Route of a product in step order; empty for an unknown product. */
export function routeOf(product: ProductEntry | null): readonly RouteStep[] {
  if (product === null) return [];
  const known = routes.get(product);
  if (known !== undefined) return known;
  const route = [...(product.route ?? [])].sort((a, b) => a.step - b.step);
  routes.set(product, route);
  return route;
}

/** Builds the look-ups of a plant file. */
export function indexPlant(file: PlantFile): Plant {
  const stations = new Map((file.stations ?? []).map((station) => [station.code, station]));
  const products = new Map((file.products ?? []).map((row) => [keyOf(row.number, row.revision), row]));
  const operators = new Map((file.operators ?? []).map((row) => [row.badge, row]));
  const attrition = new Map(
    (file.parts ?? []).flatMap((row) => (row.attrition === undefined ? [] : [[row.number, row.attrition]])),
  );
  const boms = [...products.values()].flatMap(({ bom = [] }) => bom);
  const parts = new Set([
    ...(file.parts ?? []).map(({ number }) => number),
    ...boms.flatMap(({ part }) => (part === undefined ? [] : [part])),
  ]);
  const holds = new Map<string, ItemKind>();
  for (const station of stations.values())
    for (const slot of station.slots ?? []) holds.set(keyOf(station.code, slot.name), slot.holds);

  const supplies = new Map<string, SlotSupply[]>();
  const allowed = new Map<string, Set<string>>();
  for (const product of products.values())
    for (const line of product.bom ?? []) indexBomLine({ product, line, supplies, allowed });

  return {
    file,
    station: (code) => stations.get(code) ?? null,
    product: (number, revision) => products.get(keyOf(number, revision)) ?? null,
    operator: (badge) => operators.get(badge) ?? null,
    weighsOrOwes:
      attrition.size > 0 || (file.stations ?? []).some(({ scannedBy = [] }) => scannedBy.length > 0),
    weighs: attrition.size > 0,
    namesPart: (part) => parts.has(part),
    attritionOf: (part) => attrition.get(part) ?? null,
    slotHolds: (station, slot) => holds.get(keyOf(station, slot)) ?? null,
    suppliesAt: (station, product) =>
      product === null ? [] : (supplies.get(keyOf(station, product.number, product.revision)) ?? []),
    partsAllowedIn: (station, slot) => allowed.get(keyOf(station, slot)) ?? new Set(),
  };
}

function indexBomLine(entry: {
  product: ProductEntry;
  line: BomLine;
  supplies: Map<string, SlotSupply[]>;
  allowed: Map<string, Set<string>>;
}): void {
  const { product, line, supplies, allowed } = entry;
  if (line.station === undefined || line.slot === undefined || line.part === undefined) return;
  const key = keyOf(line.station, product.number, product.revision);
  const rows = supplies.get(key) ?? [];
  supplies.set(key, rows);
  let supply = rows.find((row) => row.slot === line.slot);
  if (supply === undefined) {
    supply = { slot: line.slot, parts: [], positions: [] };
    rows.push(supply);
  }
  if (!supply.parts.includes(line.part)) supply.parts.push(line.part);
  for (const position of line.positions ?? [])
    if (!supply.positions.includes(position)) supply.positions.push(position);
  const slotKey = keyOf(line.station, line.slot);
  allowed.set(slotKey, (allowed.get(slotKey) ?? new Set()).add(line.part));
}
