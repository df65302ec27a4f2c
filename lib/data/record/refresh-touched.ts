import type { Queryable } from '@/lib/data/pool';
import { ensureContainers, refreshContainer } from '@/lib/data/record/refresh-container';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { refreshItem } from '@/lib/data/record/refresh-item';
import { refreshJoinings } from '@/lib/data/record/refresh-joining';
import { refreshSlot } from '@/lib/data/record/refresh-slot';
import { foldFromLog, loadUnits, writeUnits } from '@/lib/data/record/unit-rows';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import type { Plant } from '@/lib/domain/plant/plant';

/**
 * Makes again everything that an event takes part in, each from its own events in the log. It does not matter whether
 * the event has just come, late or in time, or has just been voided: the result is the fold of what counts.
 */
export async function refreshTouched(db: Queryable, event: LoggedEvent, plant: Plant): Promise<void> {
  const { units, items, containers, mentioned, holds, joining } = touchedBy(event);
  for (const unit of units) await refreshUnit(db, unit, plant);
  for (const item of items) await refreshItem(db, item);
  if (mentioned.length > 0) await ensureContainers(db, mentioned);
  for (const container of containers) await refreshContainer(db, container);
  await refreshHolds(db, holds);
  if (joining !== null) await refreshJoinings(db, [joining.inner]);
  if (changesSlot(event)) await refreshSlot(db, event);
}

/** Folds a unit again, with the holds that its failing results placed or place no more. */
export async function refreshUnit(db: Queryable, unit: string, plant: Plant): Promise<void> {
  const before = (await loadUnits(db, [unit])).get(unit)?.state.exhausted ?? [];
  const entry = await foldFromLog(db, unit, plant);
  await writeUnits(db, new Map([[unit, entry]]), plant);
  await refreshHolds(db, [...before, ...entry.state.exhausted]);
}
