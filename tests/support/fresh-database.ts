import { afterAll, beforeAll } from 'vitest';
import { database } from '@/lib/server/database';
import { createTestDatabase, type TestDatabase } from '@/tests/support/test-database';

/** Points the server's use cases at a fresh database, and drops it afterwards. */
export async function openFreshDatabase(): Promise<TestDatabase> {
  await closeDatabase();
  const fresh = await createTestDatabase();
  process.env.DATABASE_URL = fresh.ownerUrl;
  return fresh;
}

/** Ends the connections of the use cases. */
export async function closeDatabase(): Promise<void> {
  await globalThis.reelkinDatabase?.end();
  globalThis.reelkinDatabase = undefined;
}

/** One fresh database for a test file; `owner()` gives its connection string for the owner. */
export function freshDatabase(): { ownerUrl: () => string; pool: () => ReturnType<typeof database>['pool'] } {
  let fresh: TestDatabase | undefined;
  beforeAll(async () => {
    fresh = await openFreshDatabase();
  });
  afterAll(async () => {
    await closeDatabase();
    await fresh?.drop();
  });
  return { ownerUrl: () => fresh?.ownerUrl ?? '', pool: () => database().pool };
}
