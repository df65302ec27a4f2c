import type { Page } from 'playwright';

/** Waits until the tablet keeps a unit. */
export function replicaHas(page: Page, unit: string): Promise<unknown> {
  return page.waitForFunction(async (code) => {
    const { promise, resolve } = Promise.withResolvers<boolean>();
    const request = indexedDB.open('reelkin-replica');
    request.onsuccess = () => {
      const db = request.result;
      if (!db.objectStoreNames.contains('unit')) {
        resolve(false);
        return;
      }
      const keys = db.transaction('unit').objectStore('unit').getAllKeys();
      keys.onsuccess = () => resolve(keys.result.flat().includes(code));
    };
    return promise;
  }, unit);
}
