import { afterAll, expect, test } from 'vitest';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { createSetupLink } from '@/lib/server/create-setup-link';
import { completeSetup, isSetupOpen } from '@/lib/server/people/complete-setup';
import { people } from '@/lib/server/people/people';
import { signIn } from '@/lib/server/people/sign-in';
import { closePeople } from '@/tests/support/database-with-people';
import { freshDatabase } from '@/tests/support/fresh-database';

const database = freshDatabase();
const form = { badge: 'boss-1', name: 'Ada Tarn', pin: '4711', password: 'correct horse battery' };
const closed = { ok: false, errors: [{ pointer: '/token', code: 'link_closed' }] };

afterAll(closePeople);

async function newToken(): Promise<string> {
  const link = await createSetupLink('http://127.0.0.1:3000');
  expect(link).toMatch(/^http:\/\/127\.0\.0\.1:3000\/setup\?token=[\w-]{43}$/);
  return new URL(link ?? '').searchParams.get('token') ?? '';
}

test('a link is good until a newer one is made or a day has gone, and is kept as a hash only', async () => {
  const first = await newToken();
  expect(await isSetupOpen(first)).toBe(true);
  const second = await newToken();
  expect(await isSetupOpen(first)).toBe(false);
  expect(await completeSetup({ ...form, token: first })).toMatchObject(closed);
  expect(await completeSetup({ ...form, token: `${second}x` })).toMatchObject(closed);
  expect(await isSetupOpen(second)).toBe(true);

  const rows = await people().setupLink.findMany();
  expect(rows).toHaveLength(1);
  expect(JSON.stringify(rows)).not.toContain(second);
  await people().setupLink.updateMany({ data: { expiresAt: new Date() } });
  expect(await isSetupOpen(second)).toBe(false);
  expect(await completeSetup({ ...form, token: second })).toMatchObject(closed);
});

test('a form with faults uses nothing up', async () => {
  const token = await newToken();
  expect(await completeSetup({ ...form, token, pin: '1', password: 'short' })).toMatchObject({
    ok: false,
    errors: [
      { pointer: '/pin', code: 'pin_format' },
      { pointer: '/password', code: 'password_too_short' },
    ],
  });
  expect(await isSetupOpen(token)).toBe(true);
});

test('however often it is sent at once, a link makes one administrator, who is an operator of the plant', async () => {
  const token = await newToken();
  const badges = ['boss-1', 'boss-2', 'boss-3'];
  const results = await Promise.all(badges.map((badge) => completeSetup({ ...form, token, badge })));
  expect(results.filter((result) => result.ok)).toHaveLength(1);
  const badge = badges[results.findIndex((result) => result.ok)] ?? '';
  const accounts = await people().account.findMany();
  expect(accounts).toMatchObject([{ badge, role: 'admin' }]);
  const { plant } = await loadPlant(database.pool());
  expect(plant.operator(badge)).toEqual({ badge, name: 'Ada Tarn' });

  const address = '10.1.0.1';
  expect((await signIn({ kind: 'desktop', badge, secret: form.password, address })).ok).toBe(true);
  expect((await signIn({ kind: 'station', badge, secret: form.pin, address })).ok).toBe(true);
  expect(await completeSetup({ ...form, token, badge: 'boss-9' })).toMatchObject(closed);
  expect(await createSetupLink('http://127.0.0.1:3000')).toBeNull();
});
