import { type AccountWithHashes, findAccount } from '@/lib/data/people/find-account';
import { noteSignIn } from '@/lib/data/people/note-sign-in';
import { codeSchema } from '@/lib/domain/codes';
import { type Attempt, countAttempt, forgiveAttempt } from '@/lib/server/people/attempt-limits';
import { people } from '@/lib/server/people/people';
import { isSecret } from '@/lib/server/people/secret-hash';
import type { Session, SignInKind } from '@/lib/server/people/session';

/** Why nobody was signed in. An unknown badge, a closed account and a wrong secret are told in one word. */
type SignInRefusal = { code: 'wrong_credentials' } | { code: 'too_many_attempts'; retryAfterSeconds: number };

/** What became of a sign-in: the content of the session to start, or why not. */
export type SignInResult = { ok: true; session: Session } | { ok: false; refusal: SignInRefusal };

/** A badge with its PIN or password, and the address that it came from. */
export type SignIn = Attempt & { kind: SignInKind; secret: string };

/**
 * Checks a badge with its PIN (`station`) or password (`desktop`). Attempts are limited by badge and by address, and
 * an answer takes as long for a badge that nobody has.
 */
export async function signIn({ kind, badge, secret, address }: SignIn): Promise<SignInResult> {
  if (!codeSchema.safeParse(badge).success || secret.length > SECRET_LENGTH_MAX) return WRONG;
  const retryAfterSeconds = await countAttempt({ badge, address });
  if (retryAfterSeconds !== null)
    return { ok: false, refusal: { code: 'too_many_attempts', retryAfterSeconds } };

  const account = await findAccount(people(), badge);
  const isRight = await isSecret(secret.normalize('NFKC'), secretHashOf(account, kind));
  if (account === null || !isRight) return WRONG;

  await forgiveAttempt({ badge, address });
  await noteSignIn(people(), { badge, at: new Date() });
  return { ok: true, session: { badge, epoch: account.sessionEpoch, kind } };
}

const SECRET_LENGTH_MAX = 1000;
const WRONG: SignInResult = { ok: false, refusal: { code: 'wrong_credentials' } };

function secretHashOf(account: AccountWithHashes | null, kind: SignInKind): string | null {
  if (account === null || !account.isActive) return null;
  return kind === 'station' ? account.pinHash : account.passwordHash;
}
