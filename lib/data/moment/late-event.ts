import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/**
 * An event that arrived after a moment, when (microseconds) and by whom. `position` is its place in the log, null for
 * one that was refused; `unit` is what it or what it voids is about. `received`: the numbers of its device that had
 * arrived with it, as a multirange, where the event opens or closes a gap.
 */
export type LateEvent = {
  event: LoggedEvent;
  position: number | null;
  recordedAtUs: number;
  recordedBy: string;
  unit: string | null;
  received: string | null;
};
