import { hasAdministrator } from '@/lib/data/people/has-administrator';
import type { PeopleDb } from '@/lib/data/people/people-db';

/**
 * Uses up a setup link and makes its administrator in one transaction; false, and nobody is made, when the link is
 * used, expired or unknown or when there is an administrator. A badge that has an account already is promoted.
 */
export async function consumeSetupLink(
  db: PeopleDb,
  use: { tokenHash: string; now: Date; badge: string; pinHash: string; passwordHash: string },
): Promise<boolean> {
  const { tokenHash, now, badge, pinHash, passwordHash } = use;
  const administrator = { role: 'admin', pinHash, passwordHash, isActive: true };
  return db.$transaction(async (tx) => {
    // The first statement locks the link's row: a second use waits for the first and then finds it used.
    const { count } = await tx.setupLink.updateMany({
      where: { tokenHash, usedAt: null, expiresAt: { gt: now } },
      data: { usedAt: now },
    });
    if (count !== 1 || (await hasAdministrator(tx))) return false;
    await tx.account.upsert({
      where: { badge },
      create: { badge, ...administrator },
      update: { ...administrator, sessionEpoch: { increment: 1 } },
    });
    return true;
  });
}
