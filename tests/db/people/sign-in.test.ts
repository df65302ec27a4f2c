import { expect, test, vi } from 'vitest';
import { authenticate } from '@/lib/server/http/authenticate';
import {
  ADDRESS_ATTEMPTS_MAX,
  BADGE_ATTEMPTS_A_DAY_MAX,
  BADGE_ATTEMPTS_MAX,
} from '@/lib/server/people/attempt-limits';
import { createAccount } from '@/lib/server/people/create-account';
import { listPeople } from '@/lib/server/people/list-people';
import { signIn } from '@/lib/server/people/sign-in';
import { updateAccount } from '@/lib/server/people/update-account';
import { cookieOf, cookieOfRole, databaseWithPeople } from '@/tests/support/database-with-people';

databaseWithPeople();

const PASSWORD = 'correct horse battery staple';
const WRONG = { ok: false, refusal: { code: 'wrong_credentials' } };
let addressCount = 0;

async function newPerson(badge: string): Promise<void> {
  const form = { badge, name: badge.toUpperCase(), role: 'operator', pin: '4711', password: PASSWORD };
  expect(await createAccount(form, 'test-admin')).toEqual({ ok: true });
}

function freshAddress(): string {
  addressCount += 1;
  return `10.0.0.${addressCount}`;
}

async function whoIs(headers: Record<string, string>) {
  return authenticate(new Request('http://reelkin.test/', { headers }));
}

test('the PIN is for stations, the password for desks, and neither opens the other', async () => {
  await newPerson('p-ways');
  const by = { badge: 'p-ways', address: freshAddress() };
  const session = { badge: 'p-ways', epoch: 0 };
  expect(await signIn({ ...by, kind: 'station', secret: '4711' })).toEqual({
    ok: true,
    session: { ...session, kind: 'station' },
  });
  expect(await signIn({ ...by, kind: 'desktop', secret: PASSWORD })).toEqual({
    ok: true,
    session: { ...session, kind: 'desktop' },
  });
  expect(await signIn({ ...by, kind: 'desktop', secret: '4711' })).toEqual(WRONG);
  expect(await signIn({ ...by, kind: 'station', secret: PASSWORD })).toEqual(WRONG);
  const person = (await listPeople()).find(({ badge }) => badge === 'p-ways');
  expect(person).toMatchObject({ name: 'P-WAYS', account: { hasPin: true, hasPassword: true } });
  expect(person?.account?.lastSignInAt).toBeInstanceOf(Date);
});

test('an unknown badge, one without a secret and a hostile one are refused in the same words', async () => {
  const address = freshAddress();
  for (const badge of [
    'p-nobody',
    'test-operator',
    '',
    ' ',
    'x'.repeat(100_000),
    "'; drop table auth.account; --",
  ])
    expect(await signIn({ kind: 'station', badge, secret: '4711', address })).toEqual(WRONG);
});

test('after five wrong PINs even the right one waits, and other badges do not', async () => {
  await newPerson('p-limit');
  await newPerson('p-neighbour');
  const address = freshAddress();
  const wrong = { kind: 'station', badge: 'p-limit', secret: '0000' } as const;
  // Many at once gain nothing: each is counted before it is judged.
  const burst = await Promise.all(
    Array.from({ length: 20 }, () => signIn({ ...wrong, address: freshAddress() })),
  );
  expect(burst.filter((result) => !result.ok && result.refusal.code === 'wrong_credentials')).toHaveLength(
    BADGE_ATTEMPTS_MAX,
  );
  const waiting = await signIn({ ...wrong, secret: '4711', address });
  expect(waiting).toMatchObject({ ok: false, refusal: { code: 'too_many_attempts' } });
  if (!waiting.ok && waiting.refusal.code === 'too_many_attempts') {
    expect(waiting.refusal.retryAfterSeconds).toBeGreaterThan(0);
    expect(waiting.refusal.retryAfterSeconds).toBeLessThanOrEqual(300);
  }
  expect((await signIn({ kind: 'station', badge: 'p-neighbour', secret: '4711', address })).ok).toBe(true);

  // An administrator's new PIN lets the badge try again.
  expect(await updateAccount({ badge: 'p-limit', pin: '5822' })).toEqual({ ok: true });
  expect((await signIn({ ...wrong, secret: '5822', address })).ok).toBe(true);
});

test('right answers are not counted', async () => {
  await newPerson('p-often');
  const address = freshAddress();
  for (let attempt = 0; attempt < BADGE_ATTEMPTS_MAX + 3; attempt += 1)
    expect((await signIn({ kind: 'station', badge: 'p-often', secret: '4711', address })).ok).toBe(true);
});

test('an address has its own limit, and a badge a daily one', async () => {
  vi.useFakeTimers({ toFake: ['Date', 'setTimeout', 'clearTimeout'] });
  try {
    const { countAttempt } = await import('@/lib/server/people/attempt-limits');
    const address = freshAddress();
    for (let attempt = 0; attempt < ADDRESS_ATTEMPTS_MAX; attempt += 1)
      expect(await countAttempt({ badge: `p-spray-${attempt}`, address })).toBeNull();
    expect(await countAttempt({ badge: 'p-spray-last', address })).toBeGreaterThan(0);
    expect(await countAttempt({ badge: 'p-spray-last', address: freshAddress() })).toBeNull();

    let passedCount = 0;
    for (let minute = 0; minute < 12 * 60; minute += 1) {
      if ((await countAttempt({ badge: 'p-slow', address: freshAddress() })) === null) passedCount += 1;
      await vi.advanceTimersByTimeAsync(60_000);
    }
    expect(passedCount).toBe(BADGE_ATTEMPTS_A_DAY_MAX);
  } finally {
    vi.useRealTimers();
  }
});

test.each([
  ['a new PIN', { pin: '9876' }],
  ['a new password', { password: 'another long password' }],
  ['another role', { role: 'packer' }],
  ['deactivation', { isActive: false }],
])('%s ends the sessions that there are', async (_, change) => {
  const badge = `p-epoch-${Object.keys(change)[0]}`;
  await newPerson(badge);
  const before = await cookieOf({ badge, epoch: 0 });
  expect(await whoIs(before)).toEqual({ kind: 'person', badge, role: 'operator' });
  expect(await updateAccount({ badge, role: 'operator', isActive: true })).toEqual({ ok: true });
  expect(await whoIs(before)).not.toBeNull();
  expect(await updateAccount({ badge, ...change })).toEqual({ ok: true });
  expect(await whoIs(before)).toBeNull();
  const isClosed = 'isActive' in change;
  const after = await whoIs(await cookieOf({ badge, epoch: 1 }));
  expect(after).toEqual(
    isClosed ? null : { kind: 'person', badge, role: 'role' in change ? change.role : 'operator' },
  );
  if (isClosed)
    expect(await signIn({ kind: 'station', badge, secret: '4711', address: freshAddress() })).toEqual(WRONG);
});

test('a session is over after twelve hours', async () => {
  vi.useFakeTimers({ toFake: ['Date'] });
  try {
    const headers = await cookieOfRole('qa');
    vi.setSystemTime(Date.now() + 11.9 * 3600 * 1000);
    expect(await whoIs(headers)).toEqual({ kind: 'person', badge: 'test-qa', role: 'qa' });
    vi.setSystemTime(Date.now() + 0.2 * 3600 * 1000);
    expect(await whoIs(headers)).toBeNull();
  } finally {
    vi.useRealTimers();
  }
});

test('the last administrator stays one, also when two go at the same moment', async () => {
  const refused = [{ pointer: '/role', code: 'last_administrator' }];
  expect(await updateAccount({ badge: 'test-admin', role: 'qa' })).toMatchObject({ errors: refused });
  expect(await updateAccount({ badge: 'test-admin', isActive: false })).toMatchObject({ errors: refused });
  await newPerson('p-second');
  expect(await updateAccount({ badge: 'p-second', role: 'admin' })).toEqual({ ok: true });
  const both = await Promise.all([
    updateAccount({ badge: 'test-admin', role: 'qa' }),
    updateAccount({ badge: 'p-second', isActive: false }),
  ]);
  expect(both.filter((result) => result.ok)).toHaveLength(1);
});

test('an account is refused with its faults, and a badge has one account', async () => {
  await newPerson('p-once');
  const form = { badge: 'p-once', role: 'qa', pin: '1111' };
  expect(await createAccount(form, 'test-admin')).toMatchObject({
    ok: false,
    errors: [{ pointer: '/badge', code: 'badge_taken' }],
  });
  expect(await createAccount({ ...form, badge: 'token', role: 'boss' }, 'test-admin')).toMatchObject({
    ok: false,
    errors: [
      { pointer: '/badge', code: 'badge_reserved' },
      { pointer: '/role', code: 'invalid_value' },
    ],
  });
  expect(await updateAccount({ badge: 'p-nobody', pin: '1234' })).toMatchObject({
    errors: [{ pointer: '/badge', code: 'unknown_badge' }],
  });
});
