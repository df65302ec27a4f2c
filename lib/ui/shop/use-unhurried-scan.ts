import { useCallback, useEffect, useRef } from 'react';

const STOP_SHOWN_MS = 1000;

/**
 * Hands scans on, but leaves a no-go standing for a second: what is scanned meanwhile keeps its turn. `stop` is what
 * the no-go says, or null.
 */
export function useUnhurriedScan(stop: unknown, scan: (code: string) => void): (code: string) => void {
  const shownUntilMs = useRef(0);
  const queue = useRef<string[]>([]);
  const newestScan = useRef(scan);
  newestScan.current = scan;
  useEffect(() => {
    if (stop !== null) shownUntilMs.current = performance.now() + STOP_SHOWN_MS;
  }, [stop]);

  const drain = useCallback((): void => {
    const waitMs = shownUntilMs.current - performance.now();
    if (waitMs > 0) {
      setTimeout(drain, waitMs);
      return;
    }
    const code = queue.current.shift();
    if (code === undefined) return;
    newestScan.current(code);
    // After the screen has had the time to say no to this one.
    if (queue.current.length > 0) setTimeout(drain, 0);
  }, []);
  return useCallback(
    (code) => {
      queue.current.push(code);
      if (queue.current.length === 1) drain();
    },
    [drain],
  );
}
