import { useEffect, useState } from 'react';
import { type FloorPicture, floorPictureSchema } from '@/lib/domain/floor/floor-picture';

const PERIOD_MS = 5000;
const STALE_AFTER_MS = 15_000;

/** The newest picture of the floor; `isStale` when the server has not answered for a while. */
export type FloorWatch = { picture: FloorPicture; isStale: boolean; isSignedOut: boolean };

/** Asks for the floor every five seconds while the page is seen, and at once when it is seen again. */
export function useFloorPicture(first: FloorPicture): FloorWatch {
  const [watch, setWatch] = useState<FloorWatch>({ picture: first, isStale: false, isSignedOut: false });
  useEffect(() => {
    let answeredAtMs = performance.now();
    let isOver = false;
    const ask = async (): Promise<void> => {
      if (document.hidden) return;
      const answer = await fetchPicture().catch(() => null);
      if (isOver) return;
      if (answer === 'signed_out') {
        setWatch((before) => ({ ...before, isSignedOut: true }));
        return;
      }
      if (answer !== null) answeredAtMs = performance.now();
      const isStale = performance.now() - answeredAtMs > STALE_AFTER_MS;
      setWatch((before) => ({ picture: answer ?? before.picture, isStale, isSignedOut: false }));
    };
    const timer = setInterval(ask, PERIOD_MS);
    document.addEventListener('visibilitychange', ask);
    return () => {
      isOver = true;
      clearInterval(timer);
      document.removeEventListener('visibilitychange', ask);
    };
  }, []);
  return watch;
}

async function fetchPicture(): Promise<FloorPicture | 'signed_out' | null> {
  const response = await fetch('/api/floor', { signal: AbortSignal.timeout(PERIOD_MS * 2) });
  if (response.status === 401) return 'signed_out';
  return response.ok ? floorPictureSchema.parse(await response.json()) : null;
}
