import type { DeviceClock } from '@/lib/domain/clock/device-clock';
import { stampOf } from '@/lib/domain/clock/device-clock';

const SET_SAID_MS = 2000;
const WORTH_SAYING_MS = 60_000;

/** What people at a device should know of its clock; null while there is nothing to say. */
export type ClockNotice =
  /** It has never had contact with the server: only its wall clock tells the time. */
  | { kind: 'no_contact' }
  /** Somebody set it since the last contact: by so much, negative for back. */
  | { kind: 'set'; byMs: number; doubtMs: number }
  /** What is recorded now may be wrong by so much, until there is contact. */
  | { kind: 'doubtful'; doubtMs: number }
  /** It shows a wrong time, which does no harm: ahead by so much, negative for behind. */
  | { kind: 'wrong'; byMs: number };

/** The one thing to say about a device's clock, the most worrying first. */
export function clockNotice(clock: DeviceClock): ClockNotice | null {
  if (clock.estimate === null) return { kind: 'no_contact' };
  const doubtMs = stampOf(clock).uncertaintyMs;
  const wrongMs = clock.reading.wallMs - clock.estimate.atMs;
  if (Math.abs(clock.setMs) >= SET_SAID_MS) return { kind: 'set', byMs: clock.setMs, doubtMs };
  if (doubtMs >= WORTH_SAYING_MS) return { kind: 'doubtful', doubtMs };
  if (Math.abs(wrongMs) >= WORTH_SAYING_MS) return { kind: 'wrong', byMs: wrongMs };
  return null;
}
