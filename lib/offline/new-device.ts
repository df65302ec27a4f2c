import { v4, v7 } from 'uuid';
import type { DeviceState } from '@/lib/offline/device-log';

/** A device that has made no event yet; its name is its own, so a wiped tablet never goes on under the old one. */
export function newDevice(): DeviceState {
  return { device: `tab-${v4().replaceAll('-', '').slice(0, 12)}`, nextSeq: 1, lastStartedAt: null };
}

/** An id for a new event: a UUID of version 7, later than every one made here before. */
export function newEventId(): string {
  return v7();
}
