import { X509Certificate } from 'node:crypto';
import { createServer, request as plainRequest, type RequestListener } from 'node:http';
import { createServer as createSecureServer, request as secureRequest } from 'node:https';
import { type AddressInfo, connect } from 'node:net';
import type { TLSSocket } from 'node:tls';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { admitRequest } from '@/lib/server/http/admit-request';
import { isSecureRequest } from '@/lib/server/people/request-origin';
import { issueServerCertificate, type KeyPair, makeAuthority } from '@/scripts/serve/tls/issue-certificates';
import { onePort } from '@/scripts/serve/tls/one-port';
import { plainRequests } from '@/scripts/serve/tls/plain-requests';

const NAMES = { hosts: ['line-server', 'localhost'], addresses: ['127.0.0.1', '::1'] };

/** Says by which way a request came, as the pages are told. */
const answer: RequestListener = (request, response) => {
  if (!admitRequest(request, response)) return;
  const headers = new Headers({ 'x-forwarded-proto': String(request.headers['x-forwarded-proto'] ?? '') });
  response.end(isSecureRequest(headers) ? 'secure' : 'plain');
};

let authority: KeyPair;
let pair: KeyPair;
let close: () => Promise<void>;
let port = 0;
let useCertificate: (next: KeyPair) => void;

beforeAll(async () => {
  authority = await makeAuthority(NAMES.hosts, Date.now());
  pair = await issueServerCertificate(authority, NAMES, Date.now());
  const secure = createSecureServer(pair, answer);
  const plain = createServer(plainRequests(answer));
  useCertificate = (next) => secure.setSecureContext(next);
  const shared = onePort({ secure, plain });
  await new Promise<void>((resolve) => shared.listen({ host: '127.0.0.1', port: 0 }, resolve));
  port = (shared.address() as AddressInfo).port;
  close = () =>
    new Promise((resolve) => {
      shared.close(() => resolve());
      for (const each of [secure, plain]) each.closeAllConnections();
    });
});
afterAll(() => close());

type Answer = { status: number; text: string; location: string | undefined; serial: string | null };

function ask(
  scheme: 'http' | 'https',
  path: string,
  options: { method?: string; headers?: Record<string, string>; name?: string; ca?: string } = {},
): Promise<Answer> {
  const { method = 'GET', headers = {}, name, ca = authority.cert } = options;
  const common = { host: '127.0.0.1', port, path, method, headers, agent: false as const };
  return new Promise((resolve, reject) => {
    const request =
      scheme === 'http'
        ? plainRequest(common)
        : secureRequest({ ...common, ca, ...(name !== undefined && { servername: name }) });
    request.on('error', reject).on('response', (response) => {
      const { socket } = response;
      const serial = 'getPeerX509Certificate' in socket ? peerSerial(socket as TLSSocket) : null;
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => {
        text += part;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, text, location: response.headers.location, serial }),
      );
    });
    request.end();
  });
}

function peerSerial(socket: TLSSocket): string | null {
  return socket.getPeerX509Certificate()?.serialNumber ?? null;
}

describe('one port for both', () => {
  it('serves HTTPS to whoever trusts the authority, and is known to have come that way', async () => {
    expect(await ask('https', '/floor')).toMatchObject({ status: 200, text: 'secure' });
    expect(await ask('https', '/floor', { name: 'line-server' })).toMatchObject({ text: 'secure' });
    expect(await ask('https', '/floor', { headers: { 'x-forwarded-proto': 'http' } })).toMatchObject({
      text: 'secure',
    });
  });

  it('is trusted by nobody else, and under no other name', async () => {
    const other = await makeAuthority(NAMES.hosts, Date.now());
    await expect(ask('https', '/', { ca: other.cert })).rejects.toThrow(
      /unable to verify|signature|self.signed/i,
    );
    await expect(ask('https', '/', { name: 'elsewhere' })).rejects.toThrow(/does not match|altnames/i);
  });

  it.each(['/trust', '/trust/authority.crt', '/api/health', '/_next/static/chunks/a-b.js', '/trust?x=1'])(
    'gives %s by plain HTTP',
    async (path) => {
      expect(await ask('http', path)).toMatchObject({ status: 200, text: 'plain' });
    },
  );

  it.each([
    '/',
    '/floor',
    '/api/events',
    '/trusted',
    '/trust/../floor',
    '/_next/image?url=/floor',
    '/sign-in?to=/trust',
  ])('sends %s on to https', async (path) => {
    const sent = await ask('http', path, { headers: { host: `line-server:${port}` } });
    expect(sent).toMatchObject({ status: 307, location: `https://line-server:${port}${path}`, text: '' });
  });

  it('does nothing of a plain request that would change something, or names no host to go to', async () => {
    for (const options of [{ method: 'POST' }, { method: 'DELETE' }, { headers: { host: 'a/b' } }]) {
      const refused = await ask('http', '/api/events', options);
      expect(refused.status).toBe(400);
      expect(JSON.parse(refused.text)).toMatchObject({ type: '/problems/https_only' });
    }
    expect((await ask('http', '/trust', { method: 'POST' })).status).toBe(400);
  });

  it('answers new connections with a renewed certificate', async () => {
    const before = await ask('https', '/');
    expect(before.serial).toBe(new X509Certificate(pair.cert).serialNumber);
    const renewed = await issueServerCertificate(authority, NAMES, Date.now());
    useCertificate(renewed);
    expect((await ask('https', '/')).serial).toBe(new X509Certificate(renewed.cert).serialNumber);
  });

  it('outlives a connection that says nothing, and one that says nonsense', async () => {
    const silent = connect({ host: '127.0.0.1', port });
    await new Promise((resolve) => silent.once('connect', resolve));
    const garbled = connect({ host: '127.0.0.1', port });
    garbled.on('error', () => undefined);
    const ended = new Promise((resolve) => garbled.once('close', resolve));
    garbled.end(Buffer.from([0x16, 0, 0, 0, 0, 0]));
    garbled.resume();
    await ended;
    expect(await ask('https', '/')).toMatchObject({ text: 'secure' });
    silent.destroy();
  });
});
