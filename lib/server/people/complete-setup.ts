import { consumeSetupLink } from '@/lib/data/people/consume-setup-link';
import { isSetupLinkOpen } from '@/lib/data/people/is-setup-link-open';
import { inputErrors } from '@/lib/domain/input-errors';
import { setupSchema } from '@/lib/domain/people/account-forms';
import type { PeopleResult } from '@/lib/server/people/create-account';
import { people } from '@/lib/server/people/people';
import { hashSecret } from '@/lib/server/people/secret-hash';
import { setupTokenHash } from '@/lib/server/people/setup-token';
import { putPlant } from '@/lib/server/put-plant';

const LINK_CLOSED: PeopleResult = {
  ok: false,
  errors: [
    { pointer: '/token', code: 'link_closed', detail: 'This link was used, is too old or was replaced.' },
  ],
};

/** Whether a setup link's token could be used now. */
export function isSetupOpen(token: string): Promise<boolean> {
  return isSetupLinkOpen(people(), { tokenHash: setupTokenHash(token), now: new Date() });
}

/**
 * Makes the first administrator from a form (see `setupSchema`) and uses up its link. The badge becomes an operator
 * first: were it the last step, a server that dies between would leave an administrator the plant does not know.
 */
export async function completeSetup(form: unknown): Promise<PeopleResult> {
  const parsed = setupSchema.safeParse(form);
  if (!parsed.success) return { ok: false, errors: inputErrors(parsed.error) };
  const { token, badge, name, pin, password } = parsed.data;
  if (!(await isSetupOpen(token))) return LINK_CLOSED;

  const put = await putPlant({ operators: [{ badge, name }] }, badge);
  if (!put.ok) return { ok: false, errors: put.errors };
  const isMade = await consumeSetupLink(people(), {
    tokenHash: setupTokenHash(token),
    now: new Date(),
    badge,
    pinHash: await hashSecret(pin),
    passwordHash: await hashSecret(password),
  });
  return isMade ? { ok: true } : LINK_CLOSED;
}
