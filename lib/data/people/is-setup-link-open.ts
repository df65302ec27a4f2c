import { hasAdministrator } from '@/lib/data/people/has-administrator';
import type { PeopleDb } from '@/lib/data/people/people-db';

/** Whether a setup link could be used at this moment; looks only. */
export async function isSetupLinkOpen(
  db: PeopleDb,
  link: { tokenHash: string; now: Date },
): Promise<boolean> {
  const found = await db.setupLink.findUnique({ where: { tokenHash: link.tokenHash } });
  const isFresh = found !== null && found.usedAt === null && found.expiresAt > link.now;
  return isFresh && !(await hasAdministrator(db));
}
