import { parseOptions } from '@node-rs/argon2';
import { expect, test } from 'vitest';
import { accountChangeSchema, newAccountSchema, setupSchema } from '@/lib/domain/people/account-forms';
import { badgeSchema, passwordSchema, pinSchema } from '@/lib/domain/people/credentials';
import { ARGON2_OPTIONS, DECOY_HASH, hashSecret, isSecret } from '@/lib/server/people/secret-hash';

const codesOf = (result: { success: boolean; error?: { issues: { code: string }[] } }): unknown[] =>
  result.error?.issues.map((issue) => ('params' in issue ? issue.params : issue.code)) ?? [];

test.each(['1234', '00000000'])('%s is a PIN', (pin) => {
  expect(pinSchema.safeParse(pin).success).toBe(true);
});

test.each(['', '123', '123456789', '12a4', '１２３４', '1234\n', ' 1234'])('%j is no PIN', (pin) => {
  expect(codesOf(pinSchema.safeParse(pin))).toEqual([{ code: 'pin_format' }]);
});

test('a password has 12 to 200 characters, and one spelling', () => {
  expect(passwordSchema.parse('Ångström-meter')).toBe(passwordSchema.parse('A\u030angstro\u0308m-meter'));
  expect(codesOf(passwordSchema.safeParse('elevenchars'))).toEqual([{ code: 'password_too_short' }]);
  expect(codesOf(passwordSchema.safeParse('x'.repeat(201)))).toEqual([{ code: 'password_too_long' }]);
  expect(codesOf(passwordSchema.safeParse('x'.repeat(1_000_000)))).toEqual([{ code: 'password_too_long' }]);
});

test('nobody has the badge that the log writes for the API token', () => {
  expect(badgeSchema.safeParse('op-114').success).toBe(true);
  expect(codesOf(badgeSchema.safeParse('token'))).toEqual([{ code: 'badge_reserved' }]);
});

test('an account needs something to sign in with; a change needs nothing but a badge', () => {
  expect(codesOf(newAccountSchema.safeParse({ badge: 'a', role: 'qa' }))).toEqual([
    { code: 'credential_missing' },
  ]);
  expect(newAccountSchema.safeParse({ badge: 'a', role: 'qa', pin: '1234' }).success).toBe(true);
  expect(accountChangeSchema.safeParse({ badge: 'a' }).success).toBe(true);
  expect(accountChangeSchema.safeParse({ badge: 'a', role: 'owner' }).success).toBe(false);
  expect(setupSchema.safeParse({ token: 't', badge: 'a', name: 'A', pin: '1234' }).success).toBe(false);
});

test('hashes are argon2id at the strength of the OWASP cheat sheet, and the decoy costs the same', async () => {
  const { memoryCost, timeCost, parallelism } = ARGON2_OPTIONS;
  expect({ memoryCost, timeCost, parallelism }).toEqual({ memoryCost: 19_456, timeCost: 2, parallelism: 1 });
  const hash = await hashSecret('4711');
  expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(parseOptions(DECOY_HASH)).toEqual(parseOptions(hash));
  expect(await isSecret('4711', hash)).toBe(true);
  expect(await isSecret('4712', hash)).toBe(false);
  expect(await isSecret('4711', null)).toBe(false);
});
