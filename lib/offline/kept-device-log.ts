import { type DBSchema, openDB } from 'idb';
import {
  type DeviceLog,
  deviceEntrySchema,
  deviceStateSchema,
  makeEvent,
  startOf,
} from '@/lib/offline/device-log';
import { newDevice, newEventId } from '@/lib/offline/new-device';

const THIS_DEVICE = 'this';

type Schema = DBSchema & {
  device: { key: string; value: unknown };
  entry: { key: number; value: unknown; indexes: { id: string } };
};

/**
 * The device log in IndexedDB. A number is given and its event kept in one transaction, and transactions of one store
 * follow each other in all tabs, so numbers are never used twice; each is on the disk before it is told of.
 */
export async function openKeptDeviceLog(): Promise<DeviceLog> {
  const db = await openDB<Schema>('reelkin', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('device');
      fresh.createObjectStore('entry', { keyPath: 'deviceSeq' }).createIndex('id', 'id', { unique: true });
    },
  });
  const change = (stores: ('device' | 'entry')[]) =>
    db.transaction(stores, 'readwrite', { durability: 'strict' });

  return {
    async append(fact) {
      const transaction = change(['device', 'entry']);
      const devices = transaction.objectStore('device');
      const kept = await devices.get(THIS_DEVICE);
      const state = kept === undefined ? newDevice() : deviceStateSchema.parse(kept);
      const deviceSeq = state.nextSeq;
      const event = makeEvent(fact, { id: newEventId(), device: state.device, deviceSeq });
      const lastStartedAt = startOf(event) ?? state.lastStartedAt;
      await devices.put({ ...state, nextSeq: deviceSeq + 1, lastStartedAt }, THIS_DEVICE);
      await transaction
        .objectStore('entry')
        .add({ id: event.id, deviceSeq, badge: fact.badge, event, reasons: null });
      await transaction.done;
      return event;
    },
    async entries() {
      const rows = await db.getAll('entry');
      return rows.map((row) => deviceEntrySchema.parse(row));
    },
    async settle(id, reasons) {
      const transaction = change(['entry']);
      const entries = transaction.objectStore('entry');
      const kept = await entries.index('id').get(id);
      if (kept !== undefined) {
        const entry = deviceEntrySchema.parse(kept);
        if (reasons === null) await entries.delete(entry.deviceSeq);
        else await entries.put({ ...entry, reasons });
      }
      await transaction.done;
    },
    async forget(id) {
      const transaction = change(['entry']);
      const entries = transaction.objectStore('entry');
      const key = await entries.index('id').getKey(id);
      if (key !== undefined) await entries.delete(key);
      await transaction.done;
    },
    async state() {
      const kept = await db.get('device', THIS_DEVICE);
      return kept === undefined ? newDevice() : deviceStateSchema.parse(kept);
    },
  };
}
