import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** The service worker of this build, or null where there is none: `next dev` has no build. */
export async function readServiceWorker(): Promise<string | null> {
  try {
    return await readFile(join(process.cwd(), '.next', 'service-worker.js'), 'utf8');
  } catch {
    return null;
  }
}
