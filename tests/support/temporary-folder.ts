import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A new folder that PostgreSQL's own user may enter too; `remove` deletes it with all it holds. */
export function makeTemporaryFolder(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'reelkin-test-'));
  chmodSync(path, 0o755);
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
