import type { Suspicion } from '@/lib/domain/balance/explain';
import type { Range, ReelPass } from '@/lib/domain/balance/ledger';

/**
 * A time at a slot in which the record cannot say which item stood there: whoever was processed then may have drawn
 * from any of `items`. Both ends are inclusive, in microseconds.
 */
export type DoubtWindow = {
  station: string;
  slot: string;
  lowUs: number;
  highUs: number;
  items: string[];
  reason: 'balance' | 'gap';
};

/** The passes that a suspicion is about, in order of time, out of those of its stay. */
export function suspectPasses(
  { part, piecesMax, between }: Suspicion,
  passes: readonly ReelPass[],
): ReelPass[] {
  const inside = passes.filter(({ lowUs, highUs }) => highUs >= between.min && lowUs <= between.max);
  if (part === 'whole') return inside;
  const ordered =
    part === 'first' ? inside.sort((a, b) => a.lowUs - b.lowUs) : inside.sort((a, b) => b.highUs - a.highUs);
  // The change may have been made during a pass, so the one that goes beyond the limit belongs to it as well.
  const suspects: ReelPass[] = [];
  let pieces = 0;
  for (const pass of ordered) {
    if (pieces >= piecesMax) break;
    suspects.push(pass);
    if (pass.isCertain) pieces += pass.pieces;
  }
  return suspects.sort((a, b) => a.lowUs - b.lowUs || a.highUs - b.highUs);
}

/** The window of a suspicion: from the first to the last of its passes, within the stay; null where it has none. */
export function windowOf(suspicion: Suspicion, suspects: readonly ReelPass[]): DoubtWindow | null {
  if (suspects.length === 0) return null;
  const { stay, other } = suspicion;
  const spans: Range = {
    min: Math.min(...suspects.map(({ lowUs }) => lowUs)),
    max: Math.max(...suspects.map(({ highUs }) => highUs)),
  };
  return {
    station: stay.station,
    slot: stay.slot,
    lowUs: Math.max(spans.min, stay.fromUs),
    // The stay ends before `toUs`, and time is counted in whole microseconds.
    highUs: Math.min(spans.max, stay.toUs - 1),
    items: other === null ? [stay.item] : [stay.item, other],
    reason: 'balance',
  };
}
