import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';

/** The event that says of another that it never happened. */
export type VoidedBy = { id: string; at: string; by: string; reason: string };

/** An event as pages tell it: as it was sent, with when and by whom it came, and what was found wrong with it. */
export type RecordedEvent = {
  event: WireEvent;
  recordedAt: string;
  recordedBy: string;
  voidedBy: VoidedBy | null;
  flags: Refusal[];
};
