import type { Page } from 'playwright';
import { runningClusterUrl } from '@/lib/data/embedded-cluster';
import { insertAccount } from '@/lib/data/people/insert-account';
import { openPeopleDb } from '@/lib/data/people/people-db';
import { ROLES, type Role } from '@/lib/domain/people/roles';
import { hashSecret } from '@/lib/server/people/secret-hash';

/** PIN and password of everyone on a test server. */
export const TEST_PIN = '4711';
export const TEST_PASSWORD = 'a password of the tests';

/** The badge of the test person with a role, who is an operator of the plant too. */
export function testBadge(role: Role): string {
  return `test-${role}`;
}

/** Gives a running test server one person for each role; its setup link is worth nothing from then on. */
export async function addTestPeople(server: {
  origin: string;
  apiToken: string;
  dataFolder: string;
}): Promise<void> {
  const url = runningClusterUrl(server.dataFolder);
  if (url === null) throw new Error(`No PostgreSQL has its data under ${server.dataFolder}.`);
  const operators = ROLES.map((role) => ({ badge: testBadge(role), name: `Test ${role}` }));
  const response = await fetch(`${server.origin}/api/plant`, {
    method: 'PUT',
    headers: { authorization: `Bearer ${server.apiToken}`, 'content-type': 'application/json' },
    body: JSON.stringify({ operators }),
  });
  if (!response.ok) throw new Error(`The plant was refused: ${await response.text()}`);
  const people = openPeopleDb(url);
  try {
    const secrets = { pinHash: await hashSecret(TEST_PIN), passwordHash: await hashSecret(TEST_PASSWORD) };
    for (const role of ROLES) await insertAccount(people, { badge: testBadge(role), role, ...secrets });
  } finally {
    await people.$disconnect();
  }
}

/** Signs a browser in at a desk as the test person with a role, and waits for the page that follows. */
export async function signInAs(page: Page, { origin, role }: { origin: string; role: Role }): Promise<void> {
  await page.goto(`${origin}/sign-in`);
  const form = page.getByRole('form', { name: 'At a desk' });
  await form.getByLabel('Badge').fill(testBadge(role));
  await form.getByLabel('Password', { exact: true }).fill(TEST_PASSWORD);
  await form.getByRole('button', { name: 'Sign in with password' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in');
}
