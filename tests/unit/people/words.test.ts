import { expect, test } from 'vitest';
import { inputErrors } from '@/lib/domain/input-errors';
import { accountChangeSchema, newAccountSchema, setupSchema } from '@/lib/domain/people/account-forms';
import { faultKey } from '@/lib/ui/people/form-fault';

const bad = ['', ' x', '\u0000', 'x'.repeat(3000), 'token', undefined, 7];

test('every fault that a form about a person can have has words of its own', () => {
  const codes = new Set<string>();
  for (const schema of [newAccountSchema, accountChangeSchema, setupSchema])
    for (const value of bad) {
      const form = { token: value, badge: value, name: value, role: value, pin: value, password: value };
      const result = schema.safeParse(form);
      const faults = result.success ? [] : inputErrors(result.error);
      for (const { pointer, code } of faults)
        if (!['/token', '/name'].includes(pointer) || schema === setupSchema) codes.add(code);
    }
  codes.delete('unknown_key');
  expect(codes.size).toBeGreaterThan(6);
  expect([...codes].filter((code) => faultKey(code) === 'other')).toEqual([]);
});
