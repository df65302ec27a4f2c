import type { PeopleDb } from '@/lib/data/people/people-db';

/** Keeps the hash of a fresh setup link; every older link is worth nothing from here on. */
export async function replaceSetupLink(
  db: PeopleDb,
  link: { tokenHash: string; createdAt: Date; expiresAt: Date },
): Promise<void> {
  await db.$transaction([db.setupLink.deleteMany(), db.setupLink.create({ data: link })]);
}
