import { sealData, unsealData } from 'iron-session';
import { z } from 'zod';
import { findAccount } from '@/lib/data/people/find-account';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { people } from '@/lib/server/people/people';
import { sessionSecret } from '@/lib/server/session-secret';

/** How long a device may deliver what somebody did who signed in on it: longer than any outage. */
const PASS_LENGTH_S = 60 * 24 * 3600;

const passSchema = z.strictObject({ vouchesFor: z.string() });

/** The server's word that a person has signed in on a device, for the events that it delivers later. */
export function sealPass(badge: string): Promise<string> {
  return sealData({ vouchesFor: badge }, { password: sessionSecret(), ttl: PASS_LENGTH_S });
}

/** The people whom passes vouch for, with their role of today; a forged, old or foreign pass vouches for nobody. */
export async function vouchedPeople(passes: readonly string[]): Promise<Map<string, PersonPrincipal>> {
  const found = new Map<string, PersonPrincipal>();
  for (const pass of passes) {
    const badge = await openPass(pass);
    const account = badge === null || found.has(badge) ? null : await findAccount(people(), badge);
    if (account !== null)
      found.set(account.badge, { kind: 'person', badge: account.badge, role: account.role });
  }
  return found;
}

async function openPass(pass: string): Promise<string | null> {
  try {
    const content: unknown = await unsealData(pass, { password: sessionSecret(), ttl: PASS_LENGTH_S });
    return passSchema.safeParse(content).data?.vouchesFor ?? null;
  } catch {
    // Any text may stand in a request; what cannot be opened is nobody's pass.
    return null;
  }
}
