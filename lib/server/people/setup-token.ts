import { createHash, randomBytes } from 'node:crypto';

/** A setup token that nobody can guess (256 bits), for an address. */
export function newSetupToken(): string {
  return randomBytes(32).toString('base64url');
}

/** What the database keeps of a token; a token has so much chance in it that a fast hash is enough. */
export function setupTokenHash(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
