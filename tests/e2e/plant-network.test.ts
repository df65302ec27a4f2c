import { request } from 'node:https';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { launchBrowser } from '@/tests/support/browser';
import { startTestServer, type TestServer } from '@/tests/support/start-test-server';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

let folder: ReturnType<typeof makeTemporaryFolder>;
let server: TestServer;
let plain: string;

beforeAll(async () => {
  folder = makeTemporaryFolder();
  server = await startTestServer({ REELKIN_DATA: folder.path, REELKIN_LAN: '1', HOST: '127.0.0.1' });
  plain = server.origin.replace('https:', 'http:');
});
afterAll(async () => {
  await server?.stop();
  folder?.remove();
});

/** Status of an answer over HTTPS, from a client that trusts one authority alone. */
function statusWith(authority: string | undefined): Promise<number> {
  return new Promise((resolve, reject) => {
    request(`${server.origin}/api/health`, { ca: authority, agent: false }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    })
      .on('error', reject)
      .end();
  });
}

test('who trusts the authority that is given out reaches the server; who does not is warned', async () => {
  const response = await fetch(`${plain}/trust/authority.crt`);
  expect(response.headers.get('content-type')).toBe('application/x-x509-ca-cert');
  expect(await statusWith(await response.text())).toBe(200);
  await expect(statusWith(undefined)).rejects.toThrow(/certificate/);
});

test('plain HTTP gives the page that tells how, and sends everything else to HTTPS', async () => {
  const elsewhere = await fetch(`${plain}/sign-in`, { redirect: 'manual' });
  expect(elsewhere.headers.get('location')).toBe(`${server.origin}/sign-in`);
  const browser = await launchBrowser();
  try {
    const page = await browser
      .newContext({ ignoreHTTPSErrors: true, viewport: { width: 390, height: 844 } })
      .then((context) => context.newPage());
    await page.goto(`${plain}/trust`);
    const printed =
      /(?:[0-9A-F]{2}:){15}[0-9A-F]{2}:?/g.exec(server.output().replaceAll(/\n\s+/g, ''))?.[0] ?? 'none';
    const shown = (await page.locator('code').first().textContent())?.replaceAll(/\s+/g, '');
    expect(shown).toContain(printed);
    expect(await faultsSeenByAxe(page)).toEqual([]);
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('heading', { name: 'Confiar en este servidor' }).waitFor();
    await page.getByRole('link', { name: server.origin }).click();
    await page.waitForURL(`${server.origin}/**`);
    expect(await page.evaluate(() => window.isSecureContext)).toBe(true);
    expect(page.url().startsWith('https:')).toBe(true);
  } finally {
    await browser.close();
  }
});
