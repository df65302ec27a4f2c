import { createHash, timingSafeEqual } from 'node:crypto';
import type { Principal } from '@/lib/domain/people/principal';
import { findPrincipal } from '@/lib/server/people/find-principal';
import { sessionOfRequest } from '@/lib/server/people/session';
import { settings } from '@/lib/server/settings';

/** Who sends a request, or null. A request with an Authorization header is judged by it, whatever cookies it has. */
export async function authenticate(request: Request): Promise<Principal | null> {
  const authorization = request.headers.get('authorization');
  if (authorization === null) return findPrincipal(await sessionOfRequest(request));
  const { apiToken } = settings();
  const given = /^Bearer +(\S.*)$/i.exec(authorization)?.[1];
  if (apiToken === null || given === undefined) return null;
  return isSameText(given, apiToken) ? { kind: 'token' } : null;
}

/** Compares digests, so that the time taken tells nothing about either text, its length included. */
function isSameText(a: string, b: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}
