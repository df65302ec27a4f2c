import type { Page } from 'playwright';
import { expect } from 'vitest';

/** Waits until the tablet keeps a unit. */
export async function replicaHas(page: Page, unit: string): Promise<void> {
  await expect.poll(() => page.evaluate(keptUnits), { timeout: 60_000 }).toContain(unit);
}

/** Runs in the page. To open a database that is not there would make it, empty. */
async function keptUnits(): Promise<unknown[]> {
  const name = 'reelkin-replica';
  if (!(await indexedDB.databases()).some((each) => each.name === name)) return [];
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const keys = opening.result.transaction('unit').objectStore('unit').getAllKeys();
      keys.onsuccess = () => {
        opening.result.close();
        resolve(keys.result.flat());
      };
    };
  });
}
