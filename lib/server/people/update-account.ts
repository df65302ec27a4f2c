import { changeAccount } from '@/lib/data/people/change-account';
import { inputErrors } from '@/lib/domain/input-errors';
import { accountChangeSchema } from '@/lib/domain/people/account-forms';
import { forgetAttempts } from '@/lib/server/people/attempt-limits';
import type { PeopleResult } from '@/lib/server/people/create-account';
import { people } from '@/lib/server/people/people';
import { hashSecret } from '@/lib/server/people/secret-hash';

const REFUSALS = {
  unknown_badge: { pointer: '/badge', code: 'unknown_badge', detail: 'This badge has no account.' },
  last_administrator: {
    pointer: '/role',
    code: 'last_administrator',
    detail: 'Nobody could manage people any more. Make another administrator first.',
  },
};

/**
 * Changes role, PIN, password or activity (see `accountChangeSchema`), which ends the person's sessions and lets the
 * badge try again at once. The caller has checked that the one who asks may manage people.
 */
export async function updateAccount(form: unknown): Promise<PeopleResult> {
  const parsed = accountChangeSchema.safeParse(form);
  if (!parsed.success) return { ok: false, errors: inputErrors(parsed.error) };
  const { badge, role, isActive, pin, password } = parsed.data;
  const outcome = await changeAccount(people(), {
    badge,
    role,
    isActive,
    pinHash: pin === undefined ? undefined : await hashSecret(pin),
    passwordHash: password === undefined ? undefined : await hashSecret(password),
  });
  if (outcome !== 'changed') return { ok: false, errors: [REFUSALS[outcome]] };
  await forgetAttempts(badge);
  return { ok: true };
}
