import { type DeviceEntry, type DeviceLog, makeEvent, startOf } from '@/lib/offline/device-log';
import { newDevice, newEventId } from '@/lib/offline/new-device';

/** A device log that ends with the page: for tests, and for a browser that lets a page keep nothing. */
export function memoryDeviceLog(): DeviceLog {
  let state = newDevice();
  const entries = new Map<string, DeviceEntry>();
  return {
    async append(fact) {
      const stamp = { id: newEventId(), device: state.device, deviceSeq: state.nextSeq };
      const event = makeEvent(fact, stamp);
      state = {
        ...state,
        nextSeq: state.nextSeq + 1,
        lastStartedAt: startOf(event) ?? state.lastStartedAt,
      };
      entries.set(event.id, {
        id: event.id,
        deviceSeq: stamp.deviceSeq,
        badge: fact.badge,
        event,
        reasons: null,
      });
      return event;
    },
    entries: async () => [...entries.values()],
    async settle(id, reasons) {
      const entry = entries.get(id);
      if (reasons === null) entries.delete(id);
      else if (entry !== undefined) entries.set(id, { ...entry, reasons });
    },
    async forget(id) {
      entries.delete(id);
    },
    state: async () => state,
  };
}
