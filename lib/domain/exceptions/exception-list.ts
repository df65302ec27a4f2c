import type { EventType } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';

/** Most open exceptions of one list; the oldest arrivals come first. */
export const EXCEPTIONS_MAX = 500;

/** An event that was recorded although it broke a rule, and what QA said about it. */
export type ExceptionEntry = {
  event: string;
  type: EventType;
  unit: string | null;
  item: string | null;
  station: string | null;
  operator: string | null;
  device: string | null;
  at: string;
  recordedAt: string;
  flags: Refusal[];
  /** Whether the hold that it caused is still open. */
  isHolding: boolean;
  /** Null while it is open; `event` is the clearing. */
  cleared: { event: string; at: string; by: string | null; reason: string } | null;
};

/** Open exceptions, and those that were cleared last. */
export type ExceptionList = { total: number; open: ExceptionEntry[]; cleared: ExceptionEntry[] };
