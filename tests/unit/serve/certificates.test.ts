import { spawnSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { issueServerCertificate, makeAuthority } from '@/scripts/serve/tls/issue-certificates';
import { keptCertificates } from '@/scripts/serve/tls/kept-certificates';
import { type LanNames, lanNames, tabletAddress } from '@/scripts/serve/tls/lan-names';
import { ownCertificate } from '@/scripts/serve/tls/own-certificate';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

const DAY_MS = 24 * 3_600_000;
const NOW_MS = Date.now();
const NAMES: LanNames = {
  hosts: ['line-server', 'localhost'],
  addresses: ['127.0.0.1', '192.168.7.20', '::1', 'fd12:3456::7'],
};
const hasOpenssl = spawnSync('openssl', ['version']).status === 0;

let folder: ReturnType<typeof makeTemporaryFolder>;
beforeEach(() => {
  folder = makeTemporaryFolder();
});
afterEach(() => folder.remove());

const at = (name: string) => join(folder.path, 'tls', name);
const modeOf = (path: string) => statSync(path).mode & 0o777;

/** What another program than the one that made them says of a chain. */
function opensslVerifies(authority: string, server: string, name: string[]): string {
  writeFileSync(join(folder.path, 'ca.pem'), authority);
  writeFileSync(join(folder.path, 'leaf.pem'), server);
  const args = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', 'ca.pem', ...name, 'leaf.pem'];
  const { stdout, stderr } = spawnSync('openssl', args, { cwd: folder.path, encoding: 'utf8' });
  return stdout + stderr;
}

describe('the certificates of a data folder', () => {
  it('cover every name and address, and nobody but this account reads the keys', async () => {
    const { server, authority, made } = await keptCertificates(folder.path, NAMES, NOW_MS);
    expect(made).toEqual({ authority: true, server: true });
    const cert = new X509Certificate(server.cert);
    for (const host of NAMES.hosts) expect(cert.checkHost(host)).toBe(host);
    for (const address of NAMES.addresses) expect(cert.checkIP(address)).toBe(address);
    expect(cert.checkHost('elsewhere')).toBeUndefined();
    expect(cert.checkIP('192.168.7.21')).toBeUndefined();
    expect(cert.checkIssued(new X509Certificate(authority.cert))).toBe(true);
    expect(authority.fingerprint).toMatch(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/);
    for (const name of ['authority.key', 'server.key']) expect(modeOf(at(name))).toBe(0o600);
    expect(modeOf(join(folder.path, 'tls'))).toBe(0o700);
    // Apple takes no certificate of a server that lives longer than 825 days (support.apple.com/HT210176; from memory).
    expect((Date.parse(cert.validTo) - Date.parse(cert.validFrom)) / DAY_MS).toBeLessThan(825);
  });

  it('are the same at the next start', async () => {
    const first = await keptCertificates(folder.path, NAMES, NOW_MS);
    const second = await keptCertificates(folder.path, NAMES, NOW_MS + DAY_MS);
    expect(second).toEqual({ ...first, made: { authority: false, server: false } });
  });

  it.each([
    ['the addresses changed', { ...NAMES, addresses: ['127.0.0.1', '10.1.2.3'] }, 0],
    ['the server’s certificate ends within a month', NAMES, 380],
    ['it has ended', NAMES, 500],
  ])('keep the authority, and renew the server’s when %s', async (_why, names, afterDays) => {
    const first = await keptCertificates(folder.path, NAMES, NOW_MS);
    const later = NOW_MS + afterDays * DAY_MS;
    const next = await keptCertificates(folder.path, names, later);
    expect(next.made).toEqual({ authority: false, server: true });
    expect(next.authority).toEqual(first.authority);
    const cert = new X509Certificate(next.server.cert);
    expect(Date.parse(cert.validTo)).toBeGreaterThan(later + 300 * DAY_MS);
    for (const address of names.addresses) expect(cert.checkIP(address)).toBe(address);
  });

  it('are made anew when the authority ends, may not name this computer, or was damaged', async () => {
    const { authority } = await keptCertificates(folder.path, NAMES, NOW_MS);
    const renamed = await keptCertificates(folder.path, { ...NAMES, hosts: ['other', 'localhost'] }, NOW_MS);
    expect(renamed.made).toEqual({ authority: true, server: true });
    expect(renamed.authority).not.toEqual(authority);
    const ended = await keptCertificates(folder.path, NAMES, NOW_MS + 3640 * DAY_MS);
    expect(ended.made).toEqual({ authority: true, server: true });
    writeFileSync(at('authority.key'), 'damaged');
    expect((await keptCertificates(folder.path, NAMES, NOW_MS)).made.authority).toBe(true);
    const key = readFileSync(at('server.key'), 'utf8');
    rmSync(at('server.key'));
    const again = await keptCertificates(folder.path, NAMES, NOW_MS);
    expect(again.made).toEqual({ authority: false, server: true });
    expect(again.server.key).not.toBe(key);
  });
});

describe.runIf(hasOpenssl)('openssl', () => {
  it('takes the chain for its names, and no name that the authority may not give', async () => {
    const authority = await makeAuthority(NAMES.hosts, NOW_MS);
    const good = await issueServerCertificate(authority, NAMES, NOW_MS);
    expect(opensslVerifies(authority.cert, good.cert, ['-verify_ip', '192.168.7.20'])).toMatch(/: OK/);
    expect(opensslVerifies(authority.cert, good.cert, ['-verify_hostname', 'line-server'])).toMatch(/: OK/);
    expect(opensslVerifies(authority.cert, good.cert, ['-verify_hostname', 'else'])).toMatch(/mismatch/);
    for (const stolen of [
      { hosts: ['bank.example'], addresses: [] },
      { hosts: ['line-server'], addresses: ['203.0.113.5'] },
      { hosts: ['line-server'], addresses: ['2001:db8::1'] },
    ]) {
      const forged = await issueServerCertificate(authority, stolen, NOW_MS);
      expect(opensslVerifies(authority.cert, forged.cert, [])).toMatch(/permitted subtree violation/);
    }
  });
});

describe('a certificate of the plant’s own', () => {
  const paths = () => ({ cert: join(folder.path, 'own.crt'), key: join(folder.path, 'own.key') });

  it('is served as it is; a key of another one, an ended one and a missing one are told in words', async () => {
    const authority = await makeAuthority(NAMES.hosts, NOW_MS);
    const pair = await issueServerCertificate(authority, NAMES, NOW_MS);
    const other = await issueServerCertificate(authority, NAMES, NOW_MS);
    expect(() => ownCertificate(paths(), NOW_MS)).toThrow(
      /REELKIN_TLS_CERT names a file that cannot be read/,
    );
    writeFileSync(paths().cert, pair.cert);
    writeFileSync(paths().key, other.key);
    expect(() => ownCertificate(paths(), NOW_MS)).toThrow(/is not the one of the certificate/);
    writeFileSync(paths().key, pair.key);
    expect(ownCertificate(paths(), NOW_MS)).toEqual(pair);
    expect(() => ownCertificate(paths(), NOW_MS + 400 * DAY_MS)).toThrow(/ended on .* Renew it/);
    writeFileSync(paths().key, 'nothing');
    expect(() => ownCertificate(paths(), NOW_MS)).toThrow(/is not a private key as PEM/);
  });
});

describe('the names of this computer', () => {
  it('are private ones only, with its own loop', () => {
    const names = lanNames('0.0.0.0');
    expect(names.addresses).toContain('127.0.0.1');
    expect(names.hosts).toContain('localhost');
    expect(lanNames('8.8.8.8').addresses).toEqual(['127.0.0.1', '::1']);
    expect(lanNames('10.3.2.1').addresses).toContain('10.3.2.1');
  });

  it('give a tablet an address of the network, never of the loop', () => {
    expect(tabletAddress(NAMES)).toBe('192.168.7.20');
    expect(tabletAddress({ ...NAMES, addresses: ['127.0.0.1', '::1', 'fd12:3456::7'] })).toBe('fd12:3456::7');
    expect(tabletAddress({ ...NAMES, addresses: ['127.0.0.1', '::1', 'fe80::1'] })).toBeNull();
  });
});
