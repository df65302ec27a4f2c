import { hash, verify } from '@node-rs/argon2';

/** Argon2id as the OWASP Password Storage Cheat Sheet sets it: 19 MiB, two passes, one lane. */
export const ARGON2_OPTIONS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** The hash of a random secret that nobody has: checking against it costs what checking against a real one does. */
export const DECOY_HASH =
  '$argon2id$v=19$m=19456,t=2,p=1$aPi2R+zOU74mpeEhHlEAnA$UjpQeRmSOZLHs+ZeOYFgu45VvUrhcEmFZutDnqA8yrc';

/** Hashes a PIN or password for keeping. */
export function hashSecret(secret: string): Promise<string> {
  return hash(secret, ARGON2_OPTIONS);
}

/** Whether a secret is the hashed one; takes the same time, and is false, when there is no hash. */
export async function isSecret(secret: string, secretHash: string | null): Promise<boolean> {
  const matches = await verify(secretHash ?? DECOY_HASH, secret);
  return matches && secretHash !== null;
}
