import type { PlantFile, StationEntry } from '@/lib/domain/plant/plant-file';

/** A line with its stations in the order in which units come to them; `line` is null for stations of no line. */
export type LineOrder = { line: string | null; stations: StationEntry[] };

/**
 * Lines in the order of the plant file, the stations of no line last. A station's place in its line is the earliest
 * step that any product's route gives to its operation; operations on no route come last, ties stay as in the file.
 */
export function orderStations({ stations = [], products = [] }: PlantFile): LineOrder[] {
  const firstStep = new Map<string, number>();
  for (const { route = [] } of products)
    for (const { operation, step } of route)
      firstStep.set(operation, Math.min(step, firstStep.get(operation) ?? Number.POSITIVE_INFINITY));
  const stepOf = ({ operation }: StationEntry) => firstStep.get(operation) ?? Number.MAX_SAFE_INTEGER;

  const lines = new Map<string | null, StationEntry[]>();
  for (const station of stations) {
    const line = station.line ?? null;
    lines.set(line, [...(lines.get(line) ?? []), station]);
  }
  return [...lines]
    .map(([line, members]) => ({ line, stations: members.sort((a, b) => stepOf(a) - stepOf(b)) }))
    .sort((a, b) => Number(a.line === null) - Number(b.line === null));
}
