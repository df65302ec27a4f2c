import type { PeopleDb } from '@/lib/data/people/people-db';
import type { Role } from '@/lib/domain/people/roles';

/** What a new account row holds. */
export type NewAccountRow = {
  badge: string;
  role: Role;
  pinHash: string | null;
  passwordHash: string | null;
};

/** Adds an account; false when the badge has one already. */
export async function insertAccount(db: PeopleDb, account: NewAccountRow): Promise<boolean> {
  const { count } = await db.account.createMany({ data: [account], skipDuplicates: true });
  return count === 1;
}
