import { sealData, unsealData } from 'iron-session';
import type { cookies } from 'next/headers';
import { z } from 'zod';
import { sessionSecret } from '@/lib/server/session-secret';

/** Name of the cookie that carries the sealed session. */
export const SESSION_COOKIE = 'reelkin_session';
/** A long shift; after it everyone signs in again. */
const SESSION_LENGTH_S = 12 * 3600;

const sessionSchema = z.object({
  badge: z.string(),
  epoch: z.int(),
  kind: z.enum(['station', 'desktop']),
});

/** What a session says: whose it is, the account's epoch at sign-in, and how they signed in. */
export type Session = z.infer<typeof sessionSchema>;
/** With badge and PIN at a shared station, or with badge and password at a desktop. */
export type SignInKind = Session['kind'];

type CookieStore = Awaited<ReturnType<typeof cookies>>;

/** The session that a request carries, or null when there is none, or it is forged or past its time. */
export function sessionOfRequest(request: Request): Promise<Session | null> {
  const prefix = `${SESSION_COOKIE}=`;
  const pairs = (request.headers.get('cookie') ?? '').split(';').map((pair) => pair.trim());
  return openSeal(pairs.find((pair) => pair.startsWith(prefix))?.slice(prefix.length));
}

/** The session in a page's or an action's cookies, or null. */
export function sessionOfCookies(store: CookieStore): Promise<Session | null> {
  return openSeal(store.get(SESSION_COOKIE)?.value);
}

/** Puts a session into the cookies of an action; `isSecure` when the browser came by https. */
export async function startSession(
  store: CookieStore,
  start: { session: Session; isSecure: boolean },
): Promise<void> {
  store.set(SESSION_COOKIE, await sealSession(start.session), {
    httpOnly: true,
    sameSite: 'lax',
    secure: start.isSecure,
    path: '/',
    maxAge: SESSION_LENGTH_S,
  });
}

/** Removes the session from the cookies of an action. */
export function endSession(store: CookieStore): void {
  store.delete(SESSION_COOKIE);
}

/** A session as the value of its cookie: encrypted, signed and with its end. */
export function sealSession(session: Session): Promise<string> {
  return sealData(session, { password: sessionSecret(), ttl: SESSION_LENGTH_S });
}

async function openSeal(seal: string | undefined): Promise<Session | null> {
  if (seal === undefined || seal === '') return null;
  try {
    const content: unknown = await unsealData(seal, { password: sessionSecret(), ttl: SESSION_LENGTH_S });
    return sessionSchema.safeParse(content).data ?? null;
  } catch {
    // Any text may stand in a cookie; what cannot be opened is nobody's session.
    return null;
  }
}
