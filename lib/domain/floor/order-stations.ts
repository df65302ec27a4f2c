import type { PlantFile, StationEntry } from '@/lib/domain/plant/plant-file';

/** A line with its stations in the order in which units come to them; `line` is null for stations of no line. */
export type LineOrder = { line: string | null; stations: StationEntry[] };

/**
 * Lines in the order of the plant file, the stations of no line last. A station's place in its line is the earliest
 * step that any product's route gives to its operation; one on no route stays before the station that follows it in the
 * file, and ties stay as in the file.
 */
export function orderStations({ stations = [], products = [] }: PlantFile): LineOrder[] {
  const firstStep = new Map<string, number>();
  for (const { route = [] } of products)
    for (const { operation, step } of route)
      firstStep.set(operation, Math.min(step, firstStep.get(operation) ?? Number.POSITIVE_INFINITY));
  const lines = new Map<string | null, StationEntry[]>();
  for (const station of stations) {
    const line = station.line ?? null;
    lines.set(line, [...(lines.get(line) ?? []), station]);
  }
  return [...lines]
    .map(([line, members]) => ({ line, stations: inRouteOrder(members, firstStep) }))
    .sort((a, b) => Number(a.line === null) - Number(b.line === null));
}

function inRouteOrder(
  members: readonly StationEntry[],
  firstStep: ReadonlyMap<string, number>,
): StationEntry[] {
  let following = Number.MAX_SAFE_INTEGER;
  const ranked = members.toReversed().map((station) => {
    following = firstStep.get(station.operation) ?? following;
    return { station, rank: following };
  });
  return ranked
    .toReversed()
    .sort((a, b) => a.rank - b.rank)
    .map(({ station }) => station);
}
