import { findAccount } from '@/lib/data/people/find-account';
import { insertAccount } from '@/lib/data/people/insert-account';
import { type InputError, inputErrors } from '@/lib/domain/input-errors';
import { newAccountSchema } from '@/lib/domain/people/account-forms';
import { people } from '@/lib/server/people/people';
import { hashSecret } from '@/lib/server/people/secret-hash';
import { putPlant } from '@/lib/server/put-plant';

/** What became of a form about a person; the pointers name its fields. */
export type PeopleResult = { ok: true } | { ok: false; errors: InputError[] };

const BADGE_TAKEN: PeopleResult = {
  ok: false,
  errors: [{ pointer: '/badge', code: 'badge_taken', detail: 'This badge has an account already.' }],
};

/**
 * Gives a person an account (see `newAccountSchema`) and makes the badge an operator of the plant, so that events may
 * name it. The caller has checked that `recordedBy` may manage people.
 */
export async function createAccount(form: unknown, recordedBy: string): Promise<PeopleResult> {
  const parsed = newAccountSchema.safeParse(form);
  if (!parsed.success) return { ok: false, errors: inputErrors(parsed.error) };
  const { badge, name, role, pin, password } = parsed.data;
  if ((await findAccount(people(), badge)) !== null) return BADGE_TAKEN;

  const operator = name === undefined ? { badge } : { badge, name };
  const put = await putPlant({ operators: [operator] }, recordedBy);
  if (!put.ok) return { ok: false, errors: put.errors };
  const isInserted = await insertAccount(people(), {
    badge,
    role,
    pinHash: pin === undefined ? null : await hashSecret(pin),
    passwordHash: password === undefined ? null : await hashSecret(password),
  });
  return isInserted ? { ok: true } : BADGE_TAKEN;
}
