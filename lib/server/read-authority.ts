import { X509Certificate } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { settings } from '@/lib/server/settings';

/** The certificate authority that devices of the plant are asked to trust: as PEM, and its SHA-256 to compare. */
export type Authority = { pem: string; fingerprint: string; endsAt: string };

/** That authority, or null where the server asks nobody to trust one. */
export async function readAuthority(): Promise<Authority | null> {
  const { tlsAuthority } = settings();
  if (tlsAuthority === null) return null;
  const pem = await readFile(tlsAuthority, 'utf8');
  const cert = new X509Certificate(pem);
  return { pem, fingerprint: cert.fingerprint256, endsAt: new Date(cert.validTo).toISOString() };
}
