import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import {
  type DeviceEntry,
  type DeviceLog,
  type DeviceState,
  deviceEntrySchema,
  deviceStateSchema,
  makeEvent,
  retoldEvent,
  type Stamp,
  startOf,
} from '@/lib/offline/device-log';
import { fetchEventSchema } from '@/lib/offline/event-schema';
import { newDevice, newEventId } from '@/lib/offline/new-device';

const THIS_DEVICE = 'this';

type Schema = DBSchema & {
  device: { key: string; value: unknown };
  entry: { key: number; value: unknown; indexes: { id: string } };
};

/**
 * The device log in IndexedDB. A number is given and its event kept in one transaction, and transactions of one store
 * follow each other in all tabs, so numbers are never used twice; each is on the disk before it is told of. A browser
 * whose storage was wiped finds no device here, and becomes a new one.
 */
export async function openKeptDeviceLog(): Promise<DeviceLog> {
  const db = await openDB<Schema>('reelkin-log', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('device');
      // The key is the order of appending, which is the order of the numbers of any one device name.
      fresh.createObjectStore('entry', { autoIncrement: true }).createIndex('id', 'id', { unique: true });
    },
  });
  const state = async (): Promise<DeviceState> => stateOf(await db.get('device', THIS_DEVICE));

  return {
    async append(fact) {
      // A transaction does not wait for anything but its own requests.
      const schema = await fetchEventSchema();
      return change(db, async ({ entries, devices, device }) => {
        const event = makeEvent(fact, stampOf(device), schema);
        const lastStartedAt = startOf(event) ?? device.lastStartedAt;
        await devices.put({ ...device, nextSeq: device.nextSeq + 1, lastStartedAt }, THIS_DEVICE);
        await entries.add(entryOf(event, fact.badge, device.nextSeq));
        return event;
      });
    },
    async entries() {
      const rows = await db.getAll('entry');
      return rows.map((row) => deviceEntrySchema.parse(row));
    },
    settle: (id, reasons) =>
      change(db, async ({ entries }) => {
        const key = await entries.index('id').getKey(id);
        if (key === undefined) return;
        if (reasons === null) await entries.delete(key);
        else await entries.put({ ...deviceEntrySchema.parse(await entries.get(key)), reasons }, key);
      }),
    retell: (id) =>
      change(db, async ({ entries, devices, device }) => {
        const key = await entries.index('id').getKey(id);
        if (key === undefined) return null;
        const old = deviceEntrySchema.parse(await entries.get(key));
        const event = retoldEvent(old.event, stampOf(device));
        await devices.put({ ...device, nextSeq: device.nextSeq + 1 }, THIS_DEVICE);
        await entries.delete(key);
        await entries.add(entryOf(event, old.badge, device.nextSeq));
        return event;
      }),
    becomeNew: () =>
      change(db, async ({ entries, devices, device }) => {
        let next = { ...device, ...newDevice(), lastStartedAt: device.lastStartedAt };
        for (const key of await entries.getAllKeys()) {
          const entry = deviceEntrySchema.parse(await entries.get(key));
          if (entry.reasons !== null) continue;
          const stamp = { device: next.device, deviceSeq: next.nextSeq };
          await entries.put({ ...entry, deviceSeq: next.nextSeq, event: { ...entry.event, ...stamp } }, key);
          next = { ...next, nextSeq: next.nextSeq + 1 };
        }
        await devices.put(next, THIS_DEVICE);
      }),
    forget: (id) =>
      change(db, async ({ entries }) => {
        const key = await entries.index('id').getKey(id);
        if (key !== undefined) await entries.delete(key);
      }),
    state,
  };
}

function stores(db: IDBPDatabase<Schema>) {
  const transaction = db.transaction(['device', 'entry'], 'readwrite', { durability: 'strict' });
  return {
    transaction,
    devices: transaction.objectStore('device'),
    entries: transaction.objectStore('entry'),
  };
}
type Stores = ReturnType<typeof stores>;

/** One change of the log: all of it, or nothing, and on the disk when this resolves. */
async function change<T>(
  db: IDBPDatabase<Schema>,
  work: (open: Omit<Stores, 'transaction'> & { device: DeviceState }) => Promise<T>,
): Promise<T> {
  const { transaction, ...open } = stores(db);
  try {
    const result = await work({ ...open, device: stateOf(await open.devices.get(THIS_DEVICE)) });
    await transaction.done;
    return result;
  } catch (error) {
    transaction.done.catch(() => undefined);
    if (transaction.error === null) abort(transaction);
    throw error;
  }
}

function abort(transaction: Stores['transaction']): void {
  try {
    transaction.abort();
  } catch {
    // It had ended already.
  }
}

function stateOf(kept: unknown): DeviceState {
  return kept === undefined ? newDevice() : deviceStateSchema.parse(kept);
}

function stampOf({ device, nextSeq }: DeviceState): Stamp {
  return { id: newEventId(), device, deviceSeq: nextSeq };
}

function entryOf(event: DeviceEntry['event'], badge: string, deviceSeq: number): DeviceEntry {
  return { id: event.id, deviceSeq, badge, event, reasons: null };
}
