import type { PeopleDb } from '@/lib/data/people/people-db';

/** Whether anyone can manage people. */
export async function hasAdministrator(db: Pick<PeopleDb, 'account'>): Promise<boolean> {
  return (await db.account.count({ where: { role: 'admin', isActive: true }, take: 1 })) > 0;
}
