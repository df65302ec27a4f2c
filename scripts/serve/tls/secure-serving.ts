import { X509Certificate } from 'node:crypto';
import { join } from 'node:path';
import type { Env } from '@/lib/server/env';
import type { KeyPair } from './issue-certificates';
import { keptCertificates } from './kept-certificates';
import { lanNames, tabletAddress } from './lan-names';
import { ownCertificate } from './own-certificate';

const CHECKED_EVERY_MS = 60_000;

/** How the server speaks HTTPS: with what, under which name, and what tablets are asked to trust. */
export type SecureServing = {
  pair: KeyPair;
  /** The host to write into the address; null for the one that is listened on. */
  host: string | null;
  /** The authority that tablets must trust, made here; null for the plant's own certificate. */
  authority: { path: string; fingerprint: string } | null;
  /** Gives `apply` another pair whenever addresses, files or the time want one, until the returned function is called. */
  keepCurrent(apply: (pair: KeyPair) => void): () => void;
};

/** HTTPS as the settings ask for it; null for plain HTTP. Throws `StartProblem` when it cannot be. */
export async function openSecureServing(
  env: Env,
  report: (line: string) => void,
): Promise<SecureServing | null> {
  const { ownTls, lan } = env;
  if (ownTls === null && !lan) return null;
  const current = async (): Promise<KeyPair> =>
    ownTls === null ? (await certificatesOf(env)).server : ownCertificate(ownTls, Date.now());
  const pair = await current();
  const served = { pair, keepCurrent: keepCurrent({ current, pair, report }) };
  if (ownTls !== null) return { ...served, host: nameOf(pair.cert), authority: null };
  const { authority } = await certificatesOf(env);
  const path = join(env.dataFolder, 'tls', 'authority.crt');
  const host = env.host.startsWith('127.') ? null : tabletAddress(lanNames(env.host));
  return { ...served, host, authority: { path, fingerprint: authority.fingerprint } };
}

function certificatesOf({ dataFolder, host }: Env) {
  return keptCertificates(dataFolder, lanNames(host), Date.now());
}

/** The first name of a certificate that is one to open: neither an address nor a pattern. */
function nameOf(pem: string): string | null {
  const names = (new X509Certificate(pem).subjectAltName ?? '').split(', ');
  const [name] = names.flatMap((each) =>
    each.startsWith('DNS:') && !each.includes('*') ? [each.slice(4)] : [],
  );
  return name ?? null;
}

function keepCurrent(options: {
  current: () => Promise<KeyPair>;
  pair: KeyPair;
  report: (line: string) => void;
}): SecureServing['keepCurrent'] {
  const { current, report } = options;
  return (apply) => {
    let { pair } = options;
    const check = async (): Promise<void> => {
      try {
        const next = await current();
        if (next.cert === pair.cert && next.key === pair.key) return;
        pair = next;
        apply(pair);
        report('The certificate was renewed.');
      } catch (error) {
        // What is served goes on being served; whoever reads this has until its end.
        report(`The certificate could not be renewed: ${error instanceof Error ? error.message : error}`);
      }
    };
    const timer = setInterval(() => void check(), CHECKED_EVERY_MS);
    return () => clearInterval(timer);
  };
}
