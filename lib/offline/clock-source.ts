import { v4 } from 'uuid';
import type { ClockReading } from '@/lib/domain/clock/clock-reading';

const SAMPLES_MAX = 4;
const APART_MAX_MS = 1;

/** Reads the clocks of this page, and knows whether it was hidden meanwhile. */
export type ClockSource = { read(): ClockReading };

/** The clocks of this page; null where there is no page, on the server. */
export function pageClockSource(): ClockSource | null {
  if (typeof document === 'undefined') return null;
  const run = v4().slice(0, 18);
  let wasHidden = false;
  // A page that is put away with its tab, or frozen, may sleep with the device without being told.
  for (const name of ['visibilitychange', 'freeze', 'resume'])
    document.addEventListener(name, () => {
      wasHidden = true;
    });
  window.addEventListener('pagehide', () => {
    wasHidden = true;
  });
  return {
    read() {
      const isAwake = !wasHidden && document.visibilityState === 'visible';
      wasHidden = false;
      return { run, isAwake, ...readBoth() };
    },
  };
}

/** Both clocks at one moment: a pause between the two readings would look like a set clock. */
function readBoth(): { monotonicMs: number; wallMs: number } {
  let reading = { monotonicMs: performance.now(), wallMs: Date.now() };
  for (let sample = 1; sample < SAMPLES_MAX; sample += 1) {
    if (performance.now() - reading.monotonicMs <= APART_MAX_MS) return reading;
    reading = { monotonicMs: performance.now(), wallMs: Date.now() };
  }
  return reading;
}
