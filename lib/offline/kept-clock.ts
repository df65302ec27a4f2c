import { type DBSchema, openDB } from 'idb';
import { type DeviceClock, deviceClockSchema } from '@/lib/domain/clock/device-clock';

const THIS_DEVICE = 'this';

type Schema = DBSchema & { clock: { key: string; value: unknown } };

/**
 * Gives `merge` the clock that this device has kept (null for none) and keeps what it makes of it, as one step among
 * all tabs. Where a browser keeps nothing for a page, `merge` is not called.
 */
export async function mergeKeptClock(merge: (kept: DeviceClock | null) => DeviceClock): Promise<void> {
  try {
    const db = await openDB<Schema>('reelkin-clock', 1, {
      upgrade(fresh) {
        fresh.createObjectStore('clock');
      },
    });
    const transaction = db.transaction('clock', 'readwrite');
    const kept = deviceClockSchema.safeParse(await transaction.store.get(THIS_DEVICE));
    await transaction.store.put(merge(kept.data ?? null), THIS_DEVICE);
    await transaction.done;
    db.close();
  } catch {
    // No storage: the clock lives as long as its page, and the next contact makes it good.
  }
}
