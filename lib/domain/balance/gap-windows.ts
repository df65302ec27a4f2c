import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { Range } from '@/lib/domain/balance/ledger';

/** What stood in a slot from one time to another; `toUs` is infinite while it stands there. */
export type SlotStay = { item: string; station: string; slot: string; fromUs: number; toUs: number };

/** A station at which changes may have been scanned that have not arrived, between two times. */
export type Gap = { station: string; between: Range };

/**
 * The windows that a gap leaves in the slots of its station: while the events are owed, whatever the record puts
 * there, what stood there before it and what came after it may each have stood there. Also while the record has
 * nothing there. `stays` are in order of station, slot and time.
 */
export function gapWindows({ station, between }: Gap, stays: readonly SlotStay[]): DoubtWindow[] {
  const slots = [...new Set(stays.flatMap((stay) => (stay.station === station ? [stay.slot] : [])))];
  return slots.flatMap((slot) => {
    const own = stays.filter((stay) => stay.station === station && stay.slot === slot);
    return segmentsOf(own).flatMap(({ fromUs, toUs, items }): DoubtWindow[] => {
      const lowUs = Math.max(fromUs, between.min);
      const highUs = Math.min(toUs - 1, between.max);
      if (lowUs > highUs) return [];
      return [{ station, slot, lowUs, highUs, items: [...new Set(items)], reason: 'gap' }];
    });
  });
}

type Segment = { fromUs: number; toUs: number; items: string[] };

/** The stays of a slot and the empty times between them, each with what it may have been. */
function segmentsOf(stays: readonly SlotStay[]): Segment[] {
  const segments: Segment[] = [];
  let before: SlotStay | null = null;
  for (const [index, stay] of stays.entries()) {
    const after = stays[index + 1];
    const around = [before, after ?? null].flatMap((each) => (each === null ? [] : [each.item]));
    const emptyFromUs: number = before === null ? Number.NEGATIVE_INFINITY : before.toUs;
    if (emptyFromUs < stay.fromUs) {
      const items = [...(before === null ? [] : [before.item]), stay.item];
      segments.push({ fromUs: emptyFromUs, toUs: stay.fromUs, items });
    }
    segments.push({ fromUs: stay.fromUs, toUs: stay.toUs, items: [stay.item, ...around] });
    before = stay;
  }
  if (before !== null && before.toUs < Number.POSITIVE_INFINITY)
    segments.push({ fromUs: before.toUs, toUs: Number.POSITIVE_INFINITY, items: [before.item] });
  return segments;
}
