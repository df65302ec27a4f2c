import { useCallback, useSyncExternalStore } from 'react';

const CHANGED = 'reelkin-choice';

/**
 * A choice that this device keeps until it is changed, such as the station where it stands. Undefined on the server
 * and until the page has woken up; null when nothing was chosen.
 */
export function useKeptChoice(key: string): [string | null | undefined, (choice: string | null) => void] {
  const read = useCallback(() => localStorage.getItem(key), [key]);
  const choice = useSyncExternalStore<string | null | undefined>(subscribe, read, () => undefined);
  const choose = useCallback(
    (next: string | null): void => {
      if (next === null) localStorage.removeItem(key);
      else localStorage.setItem(key, next);
      window.dispatchEvent(new Event(CHANGED));
    },
    [key],
  );
  return [choice, choose];
}

function subscribe(listener: () => void): () => void {
  window.addEventListener(CHANGED, listener);
  window.addEventListener('storage', listener);
  return () => {
    window.removeEventListener(CHANGED, listener);
    window.removeEventListener('storage', listener);
  };
}
