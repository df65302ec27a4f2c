import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { passOf } from '@/lib/domain/genealogy/draw-rows';
import type { Overlap } from '@/lib/domain/genealogy/unit-draws';

/**
 * What stood in the slots during a pass, with the windows of doubt applied: an item that a doubted names is only
 * possible during it, and one that the record does not have there is possible too.
 */
export function applyWindows(
  event: LoggedEvent,
  overlaps: readonly Overlap[],
  windows: readonly DoubtWindow[],
): Overlap[] {
  if (event.type !== 'unit.processed') return [...overlaps];
  const { station, lowUs, highUs } = passOf(event);
  let result: Overlap[] = [...overlaps];
  for (const { slot, items, reason, ...doubted } of windows) {
    if (doubted.station !== station || lowUs > doubted.highUs || highUs < doubted.lowUs) continue;
    const isNamed = (overlap: Overlap) => overlap.slot === slot && items.includes(overlap.item);
    const absent = items.filter((item) => !result.some((each) => each.slot === slot && each.item === item));
    result = [
      ...result.map((overlap) =>
        isNamed(overlap) && !overlap.because.includes(reason)
          ? { ...overlap, because: [...overlap.because, reason] }
          : overlap,
      ),
      ...absent.map((item): Overlap => ({ event: event.id, slot, item, because: [reason] })),
    ];
  }
  return result;
}
