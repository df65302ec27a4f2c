import { type RefObject, useEffect, useRef } from 'react';
import { AFTER_FIRST_LOAD_MS } from '@/lib/ui/first-load';
import type { OnWedge } from '@/lib/ui/scanning/listen-for-scanner';
import { SCANNER_KEY } from '@/lib/ui/scanning/scanner-key';

/**
 * Listens for a scanner that types, see `listen-for-scanner.ts`. Until that has come, what is typed goes where the
 * focus is, as a person's typing does; where the scanner was set up on this device it is waited for at once.
 */
export function useWedge(box: RefObject<HTMLInputElement | null>, onScan: OnWedge): void {
  const newest = useRef(onScan);
  newest.current = onScan;
  useEffect(() => {
    let isOver = false;
    let stop: () => void = () => undefined;
    const listen = (): void => {
      clearTimeout(timer);
      document.removeEventListener('keydown', listen, { capture: true });
      // A module that does not come is no loss: the box takes what is typed into it.
      void import('@/lib/ui/scanning/listen-for-scanner').then(
        ({ listenForScanner }) => {
          if (!isOver) stop = listenForScanner(box, (payload, into) => newest.current(payload, into));
        },
        () => undefined,
      );
    };
    const isSetUp = localStorage.getItem(SCANNER_KEY) !== null;
    const timer = setTimeout(listen, isSetUp ? 0 : AFTER_FIRST_LOAD_MS);
    document.addEventListener('keydown', listen, { capture: true });
    return () => {
      isOver = true;
      clearTimeout(timer);
      document.removeEventListener('keydown', listen, { capture: true });
      stop();
    };
  }, [box]);
}
