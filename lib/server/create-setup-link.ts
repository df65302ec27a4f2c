import { hasAdministrator } from '@/lib/data/people/has-administrator';
import { replaceSetupLink } from '@/lib/data/people/replace-setup-link';
import { people } from '@/lib/server/people/people';
import { newSetupToken, setupTokenHash } from '@/lib/server/people/setup-token';

const LINK_LIFETIME_MS = 24 * 3600 * 1000;

/**
 * A link below `origin` that makes the first administrator, once, within 24 hours; null when there is one. Older
 * links stop working, and only the hash of this one is kept.
 */
export async function createSetupLink(origin: string): Promise<string | null> {
  if (await hasAdministrator(people())) return null;
  const token = newSetupToken();
  const createdAt = new Date();
  const expiresAt = new Date(createdAt.getTime() + LINK_LIFETIME_MS);
  await replaceSetupLink(people(), { tokenHash: setupTokenHash(token), createdAt, expiresAt });
  return `${origin}/setup?token=${token}`;
}
