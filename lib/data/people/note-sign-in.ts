import type { PeopleDb } from '@/lib/data/people/people-db';

/** Keeps when a person last signed in. */
export async function noteSignIn(db: PeopleDb, signIn: { badge: string; at: Date }): Promise<void> {
  await db.account.updateMany({ where: { badge: signIn.badge }, data: { lastSignInAt: signIn.at } });
}
