import { readdirSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROLES } from '@/lib/domain/people/roles';
import { launchBrowser } from '../support/browser';
import { serverWithPeople } from '../support/server-with-people';
import { signInAs } from '../support/test-people';

const { origin, apiToken } = await serverWithPeople();
const asToken = { authorization: `Bearer ${apiToken}`, 'content-type': 'application/json' };

/** Every page of the application as an address, with an invented value for each dynamic part. */
const pages = readdirSync(join(process.cwd(), 'app'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('page.tsx'))
  .map((file) => `/${file.replaceAll('\\', '/').replace(/\/?page\.tsx$/, '')}`)
  .map((path) => path.replace(/\/\([^)]*\)/g, '').replace(/\[+[^\]]*\]+/g, 'X-1') || '/')
  .sort();
const OPEN_PAGES = ['/offline', '/setup', '/sign-in'];
/** Is there on a plant's network only, `--lan`. */
const TRUST_PAGE = '/trust';

describe('without a session', () => {
  test('there are pages to look at', () => {
    expect(pages).toEqual(expect.arrayContaining(['/sign-in', '/setup', '/people', '/X-1']));
  });

  test.each(pages)('%s answers only if it is a door', async (path) => {
    const response = await fetch(origin + path, { redirect: 'manual' });
    if (path === TRUST_PAGE) expect(response.status).toBe(404);
    else if (OPEN_PAGES.includes(path)) expect(response.status).toBe(200);
    else {
      expect(response.status).toBe(307);
      expect(new URL(response.headers.get('location') ?? '', origin).pathname).toBe('/sign-in');
    }
  });
});

describe('sign-in in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser?.close());

  test.each(ROLES)('%s gets in, and to people only as administrator', async (role) => {
    const page = await (await browser.newContext()).newPage();
    await signInAs(page, { origin, role });
    await page.goto(`${origin}/people`);
    expect(new URL(page.url()).pathname).toBe(role === 'admin' ? '/people' : '/not-permitted');
    await page.context().close();
  });
});

async function post(body: BodyInit, headers: Record<string, string> = asToken): Promise<number> {
  const init = { method: 'POST', headers, body, duplex: 'half' };
  const response = await fetch(`${origin}/api/events`, init);
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  await response.arrayBuffer();
  return response.status;
}

function chunksOf(byteCount: number): ReadableStream<Uint8Array> {
  let left = byteCount;
  return new ReadableStream({
    pull(controller) {
      controller.enqueue(new Uint8Array(Math.min(left, 65_536)).fill(0x20));
      left -= 65_536;
      if (left <= 0) controller.close();
    },
  });
}

describe('bodies over the wire', () => {
  test.each([5, 20])(
    '%i MiB is too large, whole and in chunks, and the connection goes on',
    async (mebibytes) => {
      const byteCount = mebibytes * 1024 * 1024;
      for (let round = 0; round < 3; round += 1) {
        expect(await post(`"${'a'.repeat(byteCount)}"`)).toBe(413);
        expect(await post('{"events":')).toBe(400);
        expect(await post(chunksOf(byteCount))).toBe(413);
        expect(await post('{"events":')).toBe(400);
        expect(await post(chunksOf(byteCount), { 'content-type': 'application/json' })).toBe(401);
      }
    },
  );

  test('a client that leaves in the middle, and methods that nobody knows, do no harm', async () => {
    const start = `POST /api/events HTTP/1.1\r\nHost: x\r\nAuthorization: Bearer ${apiToken}\r\n`;
    await raw(`${start}Content-Type: application/json\r\nContent-Length: 1000\r\n\r\n{"events"`, 300);
    for (const method of ['TRACE', 'PROPFIND', 'QUERY'])
      expect(
        await raw(`${method} /api/events HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`, 5000),
      ).toMatch(/^HTTP\/1\.1 405 [\s\S]*application\/problem\+json[\s\S]*"status":405/);
    expect((await fetch(`${origin}/api/health`)).status).toBe(200);
  });
});

/** Sends bytes and gives what came back until the server closed the connection or the patience ended. */
function raw(text: string, patienceMs: number): Promise<string> {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(origin);
    let answer = '';
    const socket = connect(Number(port), hostname, () => socket.write(text));
    socket.setEncoding('utf8');
    socket.on('data', (part: string) => {
      answer += part;
    });
    socket.on('error', reject);
    socket.on('close', () => resolve(answer));
    setTimeout(() => socket.destroy(), patienceMs).unref();
  });
}
