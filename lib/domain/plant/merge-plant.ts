import type { PlantFile } from '@/lib/domain/plant/plant-file';

function upsert<T>(
  old: readonly T[] | undefined,
  next: readonly T[] | undefined,
  keyOf: (row: T) => string,
  merge: (a: T, b: T) => T,
): T[] {
  const rows = new Map((old ?? []).map((row) => [keyOf(row), row]));
  for (const row of next ?? []) {
    const before = rows.get(keyOf(row));
    rows.set(keyOf(row), before === undefined ? row : merge(before, row));
  }
  return [...rows.values()];
}

/**
 * Puts a plant file on top of another: entries are upserted by key and keep their place, an omitted entry or field
 * stays, slots are upserted by name, and a route, a BOM or a list of operations that is given replaces the old one.
 */
export function mergePlant(old: PlantFile, next: PlantFile): PlantFile {
  const site = next.site === undefined ? old.site : { ...old.site, ...next.site };
  return {
    ...(site === undefined ? {} : { site }),
    parts: upsert(
      old.parts,
      next.parts,
      (row) => row.number,
      (a, b) => ({ ...a, ...b }),
    ),
    stations: upsert(
      old.stations,
      next.stations,
      (row) => row.code,
      (a, b) => {
        const slots = upsert(
          a.slots,
          b.slots,
          (slot) => slot.name,
          (_, slot) => slot,
        );
        return { ...a, ...b, ...(slots.length === 0 ? {} : { slots }) };
      },
    ),
    products: upsert(
      old.products,
      next.products,
      (row) => JSON.stringify([row.number, row.revision]),
      (a, b) => ({ ...a, ...b }),
    ),
    operators: upsert(
      old.operators,
      next.operators,
      (row) => row.badge,
      (a, b) => ({ ...a, ...b }),
    ),
  };
}
