import { type Account, accountOf } from '@/lib/data/people/account';
import type { PeopleDb } from '@/lib/data/people/people-db';

/** An account with the hashes that a sign-in is checked against. */
export type AccountWithHashes = Account & { pinHash: string | null; passwordHash: string | null };

/** The account of a badge, or null; one row by primary key. */
export async function findAccount(db: PeopleDb, badge: string): Promise<AccountWithHashes | null> {
  const row = await db.account.findUnique({ where: { badge } });
  return row === null ? null : { ...accountOf(row), pinHash: row.pinHash, passwordHash: row.passwordHash };
}
