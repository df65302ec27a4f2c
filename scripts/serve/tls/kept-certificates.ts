import { createPrivateKey, randomBytes, X509Certificate } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { issueServerCertificate, type KeyPair, makeAuthority } from './issue-certificates';
import type { LanNames } from './lan-names';
import { privateNameConstraints } from './name-constraints';

const RENEWED_BEFORE_MS = 30 * 24 * 3_600_000;

/** What the server answers with, and the authority that tablets are asked to trust. */
export type Certificates = {
  server: KeyPair;
  authority: { cert: string; fingerprint: string };
  /** What had to be made: after a new authority every tablet must trust anew. */
  made: { authority: boolean; server: boolean };
};

/**
 * The certificates of a data folder, made where they are missing, do not fit the names any more, or end within a month.
 * Keys are for this account's eyes only. The authority stays for as long as it can, since tablets know it.
 */
export async function keptCertificates(
  dataFolder: string,
  names: LanNames,
  nowMs: number,
): Promise<Certificates> {
  const folder = join(dataFolder, 'tls');
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);
  const kept = readPair(folder, 'authority');
  const keepsAuthority = kept !== null && isAuthorityFor(kept, names, nowMs);
  const authority = keepsAuthority
    ? kept
    : writePair(folder, 'authority', await makeAuthority(names.hosts, nowMs));
  const last = keepsAuthority ? readPair(folder, 'server') : null;
  const keepsServer = last !== null && isServerFor(last, { authority, names, nowMs });
  const server = keepsServer
    ? last
    : writePair(folder, 'server', await issueServerCertificate(authority, names, nowMs));
  return {
    server: { cert: server.cert + authority.cert, key: server.key },
    authority: { cert: authority.cert, fingerprint: new X509Certificate(authority.cert).fingerprint256 },
    made: { authority: !keepsAuthority, server: !keepsServer },
  };
}

function isAuthorityFor(pair: KeyPair, { hosts }: LanNames, nowMs: number): boolean {
  const cert = new X509Certificate(pair.cert);
  const mayNameThem = cert.raw.includes(Buffer.from(privateNameConstraints(hosts)));
  return mayNameThem && fits(cert, pair.key, nowMs);
}

function isServerFor(
  pair: KeyPair,
  { authority, names, nowMs }: { authority: KeyPair; names: LanNames; nowMs: number },
): boolean {
  const cert = new X509Certificate(pair.cert);
  const isSigned = cert.verify(new X509Certificate(authority.cert).publicKey);
  const covers =
    names.hosts.every((host) => cert.checkHost(host) !== undefined) &&
    names.addresses.every((address) => isIP(address) !== 0 && cert.checkIP(address) !== undefined);
  return isSigned && covers && fits(cert, pair.key, nowMs);
}

function fits(cert: X509Certificate, key: string, nowMs: number): boolean {
  const isCurrent =
    Date.parse(cert.validFrom) <= nowMs && nowMs < Date.parse(cert.validTo) - RENEWED_BEFORE_MS;
  return isCurrent && cert.checkPrivateKey(createPrivateKey(key));
}

/** Null where one of the two is missing or cannot be read as what it is: then it is made again. */
function readPair(folder: string, name: string): KeyPair | null {
  try {
    const cert = readFileSync(join(folder, `${name}.crt`), 'utf8');
    const key = readFileSync(join(folder, `${name}.key`), 'utf8');
    new X509Certificate(cert);
    createPrivateKey(key);
    return { cert, key };
  } catch {
    return null;
  }
}

/** The key first: a death between the two leaves a pair that does not fit, which is made again. */
function writePair(folder: string, name: string, pair: KeyPair): KeyPair {
  for (const [end, text] of [
    ['key', pair.key],
    ['crt', pair.cert],
  ] as const) {
    const draft = join(folder, `.${name}.${end}.${randomBytes(4).toString('hex')}`);
    writeFileSync(draft, text, { mode: 0o600, flag: 'wx' });
    renameSync(draft, join(folder, `${name}.${end}`));
  }
  return pair;
}
