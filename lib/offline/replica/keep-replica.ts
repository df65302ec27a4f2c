import { contactNow, noteContact } from '@/lib/offline/contact';
import { listenToServer } from '@/lib/offline/replica/live-contact';

const REFRESH_EVERY_MS = 60_000;

/**
 * Keeps a station's replica fresh while a page shows it: at once, whenever the server says that something changed, and
 * now and then; `onFresh` is called after each time. One tab of a browser does it for all; the others find out by
 * themselves whether the server answers. Returns what ends it.
 */
export function keepReplica(station: string, onFresh: () => void): () => void {
  const ending = new AbortController();
  const { signal } = ending;
  const keep = (): Promise<void> =>
    new Promise((resolve) => {
      if (signal.aborted) return resolve();
      // Beside the page: what 50,000 units cost must not stand between a scan and its verdict.
      const worker = new Worker(new URL('./refresh-worker.ts', import.meta.url), { type: 'module' });
      const refresh = oneAtATime(() => refreshBy(worker, station).then(onFresh));
      const stop = listenToServer(() => void refresh());
      const timer = setInterval(() => {
        if (contactNow().isOnline) void refresh();
      }, REFRESH_EVERY_MS);
      void refresh();
      signal.addEventListener('abort', () => {
        clearInterval(timer);
        stop();
        worker.terminate();
        resolve();
      });
    });
  // A page without Web Locks (plain http) keeps it beside the others.
  const name = `reelkin-replica-${station}`;
  const work = 'locks' in navigator ? navigator.locks.request(name, { signal }, keep) : keep();
  void Promise.resolve(work).catch(() => undefined);
  return () => ending.abort();
}

/** Has a worker refresh the replica, once; a worker that does not come is no news of the server. */
function refreshBy(worker: Worker, station: string): Promise<void> {
  return new Promise((resolve) => {
    worker.onmessage = ({ data }: MessageEvent<boolean>) => {
      noteContact(data);
      resolve();
    };
    worker.onerror = () => resolve();
    worker.postMessage(station);
  });
}

/** Runs work once more when it is asked for meanwhile, and never twice at the same time. */
function oneAtATime(work: () => Promise<void>): () => Promise<void> {
  let isRunning = false;
  let isWanted = false;
  return async () => {
    isWanted = true;
    if (isRunning) return;
    isRunning = true;
    while (isWanted) {
      isWanted = false;
      await work().catch(() => undefined);
    }
    isRunning = false;
  };
}
