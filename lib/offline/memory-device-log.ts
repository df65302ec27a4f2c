import {
  type DeviceEntry,
  type DeviceLog,
  makeEvent,
  retoldEvent,
  type Stamp,
  startOf,
} from '@/lib/offline/device-log';
import { fetchEventSchema } from '@/lib/offline/event-schema';
import { newDevice, newEventId } from '@/lib/offline/new-device';

/** A device log that ends with the page: for tests, and for a browser that lets a page keep nothing. */
export function memoryDeviceLog(): DeviceLog {
  let state = newDevice();
  let entries: DeviceEntry[] = [];
  const stamp = (): Stamp => ({ id: newEventId(), device: state.device, deviceSeq: state.nextSeq });
  const replace = (id: string, entry: DeviceEntry) => {
    entries = entries.map((each) => (each.id === id ? entry : each));
  };
  return {
    async append(fact) {
      const schema = await fetchEventSchema();
      const event = makeEvent(fact, stamp(), schema);
      entries.push({ id: event.id, deviceSeq: state.nextSeq, badge: fact.badge, event, reasons: null });
      const lastStartedAt = startOf(event) ?? state.lastStartedAt;
      state = { ...state, nextSeq: state.nextSeq + 1, lastStartedAt };
      return event;
    },
    entries: async () => [...entries],
    async settle(id, reasons) {
      const entry = entries.find((each) => each.id === id);
      if (reasons === null) entries = entries.filter((each) => each.id !== id);
      else if (entry !== undefined) replace(id, { ...entry, reasons });
    },
    async retell(id) {
      const entry = entries.find((each) => each.id === id);
      if (entry === undefined) return null;
      const event = retoldEvent(entry.event, stamp());
      entries = entries.filter((each) => each.id !== id);
      entries.push({ ...entry, id: event.id, deviceSeq: state.nextSeq, event, reasons: null });
      state = { ...state, nextSeq: state.nextSeq + 1 };
      return event;
    },
    async becomeNew() {
      state = { ...state, ...newDevice(), lastStartedAt: state.lastStartedAt };
      entries = entries.map((entry) => {
        if (entry.reasons !== null) return entry;
        const deviceSeq = state.nextSeq;
        state = { ...state, nextSeq: deviceSeq + 1 };
        return { ...entry, deviceSeq, event: { ...entry.event, device: state.device, deviceSeq } };
      });
    },
    async forget(id) {
      entries = entries.filter((each) => each.id !== id);
    },
    state: async () => state,
  };
}
