import { useEffect, useRef } from 'react';

/** Takes up, once, a code that was scanned before the page had woken up, and takes it out of the address. */
export function useFirstScan(firstScan: string | null, onScan: (code: string) => void): void {
  const isTaken = useRef(false);
  useEffect(() => {
    if (firstScan === null || isTaken.current) return;
    isTaken.current = true;
    window.history.replaceState(null, '', window.location.pathname);
    onScan(firstScan);
  }, [firstScan, onScan]);
}
