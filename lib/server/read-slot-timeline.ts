import { loadPlant } from '@/lib/data/plant/load-plant';
import { findPasses } from '@/lib/data/timeline/find-passes';
import { findSlotBars } from '@/lib/data/timeline/find-slot-bars';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { onSnapshot } from '@/lib/data/transaction';
import type { SlotTimeline, SlotTimelineQuestion } from '@/lib/domain/genealogy/slot-timeline';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/**
 * What stood in each slot of a station during a time, and which units came by; slots of the plant come in its order,
 * also the empty ones, then those that only events name. Null for a station that neither knows.
 */
export function readSlotTimeline({ station, from, to }: SlotTimelineQuestion): Promise<SlotTimeline | null> {
  const span = { station, from: formatInstant(instantOf(from)), to: formatInstant(instantOf(to)) };
  return onSnapshot(database().pool, async (client) => {
    const completeness = await findCompleteness(client);
    const { plant } = await loadPlant(client);
    const entry = plant.station(station);
    const { bars, total } = await findSlotBars(client, span);
    const passes = await findPasses(client, span);
    if (entry === null && bars.length + passes.count === 0) return null;
    const slots = new Map<string, SlotTimeline['slots'][number]>();
    for (const { name, holds } of entry?.slots ?? []) slots.set(name, { slot: name, holds, bars: [] });
    for (const { slot, ...bar } of bars) {
      const lane = slots.get(slot) ?? { slot, holds: null, bars: [] };
      lane.bars.push(bar);
      slots.set(slot, lane);
    }
    return {
      ...span,
      operation: entry?.operation ?? null,
      line: entry?.line ?? null,
      ...completeness,
      slots: [...slots.values()],
      barsLeft: total - bars.length,
      passes,
    };
  });
}
