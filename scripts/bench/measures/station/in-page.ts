import { z } from 'zod';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { openReplicaStore, readReplicaMeta } from '@/lib/offline/replica/replica-store';
import { StationReplica } from '@/lib/offline/replica/station-replica';

/** Only Chromium tells it apart from the rest. */
const estimateSchema = z.object({ usageDetails: z.object({ indexedDB: z.number() }) });

/** What the benchmark runs inside of a station's page, on its throttled main thread; bundled by `inject.ts`. */
const inPage = {
  /** Milliseconds of the page's life until the replica of a station is whole. */
  async untilWhole(station: string): Promise<number> {
    for (;;) {
      const db = await openReplicaStore();
      const meta = await readReplicaMeta(db, station);
      db.close();
      if (meta !== null) return performance.now();
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
  },

  /** Units that are kept, and bytes on the disk of everything in IndexedDB. */
  async size(): Promise<{ units: number; bytes: number }> {
    const db = await openReplicaStore();
    const units = await db.count('unit');
    db.close();
    const { usageDetails } = estimateSchema.parse(await navigator.storage.estimate());
    return { units, bytes: usageDetails.indexedDB };
  },

  /** Milliseconds of each check of a unit by the replica, the first of a page included. */
  async timeChecks(station: string, units: readonly string[], own: readonly WireEvent[]): Promise<number[]> {
    const replica = new StationReplica(station);
    const durations: number[] = [];
    for (const unit of units) {
      const at = new Date().toISOString();
      const begin = performance.now();
      const answer = await replica.ask({ unit, operator: 'op-1', at, own });
      durations.push(performance.now() - begin);
      if (answer === null) throw new Error(`The replica keeps nothing for ${station}.`);
    }
    return durations;
  },

  /** Milliseconds of reading each unit and nothing else: what no check in this browser can do without. */
  async timeReads(station: string, units: readonly string[]): Promise<number[]> {
    const db = await openReplicaStore();
    const durations: number[] = [];
    for (const unit of units) {
      const begin = performance.now();
      await db.get('unit', [station, unit]);
      durations.push(performance.now() - begin);
    }
    db.close();
    return durations;
  },

  /** Milliseconds of requests that do nothing, one after the other. */
  async timeRequests(count: number): Promise<number[]> {
    const durations: number[] = [];
    for (let index = 0; index < count; index += 1) {
      const begin = performance.now();
      await (await fetch('/api/health')).text();
      durations.push(performance.now() - begin);
    }
    return durations;
  },

  /** Each time that the main thread was busy for more than 50 ms, in milliseconds. */
  blocks(): Promise<number[]> {
    return new Promise((resolve) => {
      new PerformanceObserver((list) => resolve(list.getEntries().map(({ duration }) => duration))).observe({
        type: 'longtask',
        buffered: true,
      });
      setTimeout(() => resolve([]), 500);
    });
  },

  /**
   * Waits for the next Enter and for the verdict about a unit. `painted` is from when the browser got the key to after
   * the frame that shows the verdict was made: its animation frame, and the message that follows it. Of that, `waited` is
   * how long the key stood behind what the page was doing, and `inserted` ends when the verdict is in the document.
   */
  watch(unit: string): { seen: Promise<Seen> } {
    let key = { atMs: Number.NaN, waited: Number.NaN };
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Enter') key = { atMs: event.timeStamp, waited: performance.now() - event.timeStamp };
    };
    // The page takes the key away from whoever listens behind it.
    window.addEventListener('keydown', onKey, { capture: true });
    const seen = new Promise<Seen>((resolve) => {
      const look = (): void => {
        const panel = [...document.querySelectorAll<HTMLElement>('[data-verdict]')].find(
          ({ dataset, textContent }) =>
            ['go', 'stop', 'caution'].includes(dataset.verdict ?? '') && textContent?.includes(unit),
        );
        if (panel === undefined || Number.isNaN(key.atMs)) return;
        observer.disconnect();
        window.removeEventListener('keydown', onKey, { capture: true });
        const inserted = performance.now() - key.atMs;
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () =>
            resolve({
              word: panel.dataset.verdict ?? '',
              waited: key.waited,
              inserted,
              painted: performance.now() - key.atMs,
            });
          port2.postMessage(null);
        });
      };
      const observer = new MutationObserver(look);
      observer.observe(document.body, {
        subtree: true,
        childList: true,
        attributes: true,
        characterData: true,
      });
    });
    return { seen };
  },
};

/** One scan and its verdict; times in milliseconds since the last key. */
export type Seen = { word: string; waited: number; inserted: number; painted: number };

declare global {
  var stationBench: typeof inPage;
}
globalThis.stationBench = inPage;
