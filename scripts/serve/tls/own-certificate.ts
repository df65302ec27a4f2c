import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { StartProblem } from '../start-problem';
import type { KeyPair } from './issue-certificates';

/** The plant's own certificate (with its chain) and key, from files; throws `StartProblem` when they cannot serve. */
export function ownCertificate(paths: { cert: string; key: string }, nowMs: number): KeyPair {
  const pair = { cert: textOf(paths.cert, 'REELKIN_TLS_CERT'), key: textOf(paths.key, 'REELKIN_TLS_KEY') };
  const cert = parsed(() => new X509Certificate(pair.cert), paths.cert, 'a certificate as PEM');
  const key = parsed(
    () => createPrivateKey(pair.key),
    paths.key,
    'a private key as PEM without a passphrase',
  );
  if (!cert.checkPrivateKey(key))
    throw new StartProblem(`The key ${paths.key} is not the one of the certificate ${paths.cert}.`);
  if (nowMs >= Date.parse(cert.validTo))
    throw new StartProblem(
      `The certificate ${paths.cert} ended on ${cert.validTo}. Renew it, and start again.`,
    );
  return pair;
}

function textOf(path: string, setting: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new StartProblem(`${setting} names a file that cannot be read: ${why}`);
  }
}

function parsed<T>(read: () => T, path: string, what: string): T {
  try {
    return read();
  } catch {
    throw new StartProblem(`${path} is not ${what}.`);
  }
}
