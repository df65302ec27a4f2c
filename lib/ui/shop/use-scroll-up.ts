import { useEffect } from 'react';

/** Brings the top of the screen, where the verdict stands, into sight whenever there is something new to say. */
export function useScrollUp(said: unknown): void {
  useEffect(() => {
    if (said !== null) window.scrollTo({ top: 0 });
  }, [said]);
}
