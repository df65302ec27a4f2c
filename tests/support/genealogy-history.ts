import type { WireEvent } from '@/lib/domain/events/catalogue';
import { formatInstant } from '@/lib/domain/time';
import { type EventMaker, eventMaker } from '@/tests/support/event-maker';

/** How much hangs on a unit: units inside it, stations that each of them met, lots that it used at each station. */
export type GenealogySize = { unit: string; innerCount: number; stationCount: number; lotCount: number };

/** A unit whose genealogy has as many nodes as its size says; `nowMs` is what the history ends before. */
export function genealogyHistory(
  size: GenealogySize,
  nowMs: number,
  make: EventMaker = eventMaker(),
): WireEvent[] {
  const at = (secondsAgo: number) =>
    ({ at: formatInstant((nowMs - secondsAgo * 1000) * 1000), gate: 'record' }) as const;
  return Array.from({ length: size.innerCount }, (_, index) => {
    const unit = `${size.unit}-IN-${index + 1}`;
    const passes = Array.from({ length: size.stationCount }, (_, station) => {
      const used = Array.from({ length: size.lotCount }, (_, lot) => ({
        item: `LOT-${size.unit}-${index}-${station}-${lot}`,
      }));
      return make.make(
        'unit.processed',
        { unit, result: 'pass', used },
        { ...at(5000 - station), station: `HAND-${station}` },
      );
    });
    return [...passes, make.make('unit.joined', { unit, into: size.unit, position: `A${index}` }, at(100))];
  }).flat();
}

/** The number of nodes that such a unit's genealogy has, the unit counted. */
export function genealogyNodeCount({ innerCount, stationCount, lotCount }: GenealogySize): number {
  return 1 + innerCount * (1 + stationCount * (1 + lotCount));
}
