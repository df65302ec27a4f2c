import { findDevices } from '@/lib/data/devices/find-devices';
import { onSnapshot } from '@/lib/data/transaction';
import type { DeviceList } from '@/lib/domain/devices/device-list';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

/** Which devices there are, and what each of them owes, as of now. */
export function readDevices(): Promise<DeviceList> {
  return onSnapshot(database().pool, async (db) => {
    const asOf = formatInstant(Date.now() * 1000);
    return { asOf, ...(await findDevices(db)) };
  });
}
