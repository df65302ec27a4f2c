import { afterAll, beforeAll } from 'vitest';
import { insertAccount } from '@/lib/data/people/insert-account';
import { ROLES, type Role } from '@/lib/domain/people/roles';
import { people } from '@/lib/server/people/people';
import { SESSION_COOKIE, sealSession } from '@/lib/server/people/session';
import { freshDatabase } from '@/tests/support/fresh-database';

/** The API token of the database tests. */
export const TEST_API_TOKEN = 'test-token-of-the-database-tests';

/** One fresh database for a test file, with an account `test-<role>` (no PIN, no password) for every role. */
export function databaseWithPeople(): ReturnType<typeof freshDatabase> {
  const database = freshDatabase();
  beforeAll(async () => {
    process.env.REELKIN_SECRET = 'a secret of the database tests, and of nothing else';
    process.env.REELKIN_API_TOKEN = TEST_API_TOKEN;
    process.env.REELKIN_LOG = 'silent';
    for (const role of ROLES)
      await insertAccount(people(), { badge: `test-${role}`, role, pinHash: null, passwordHash: null });
  });
  afterAll(closePeople);
  return database;
}

/** Ends the connections of the people's use cases. */
export async function closePeople(): Promise<void> {
  await globalThis.reelkinPeople?.$disconnect();
  globalThis.reelkinPeople = undefined;
}

/** The headers by which a signed-in person's browser asks. */
export async function cookieOf(session: { badge: string; epoch: number }): Promise<Record<string, string>> {
  return { cookie: `theme=dark; ${SESSION_COOKIE}=${await sealSession({ ...session, kind: 'desktop' })}` };
}

/** The headers by which the test account of a role asks. */
export function cookieOfRole(role: Role): Promise<Record<string, string>> {
  return cookieOf({ badge: `test-${role}`, epoch: 0 });
}
