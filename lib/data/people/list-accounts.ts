import { type Account, accountOf } from '@/lib/data/people/account';
import type { PeopleDb } from '@/lib/data/people/people-db';

/** Every account, by badge; a plant has hundreds, not millions. */
export async function listAccounts(db: PeopleDb): Promise<Account[]> {
  const rows = await db.account.findMany({ orderBy: { badge: 'asc' } });
  return rows.map(accountOf);
}
