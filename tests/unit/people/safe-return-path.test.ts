import { expect, test } from 'vitest';
import { safeReturnPath } from '@/lib/server/people/safe-return-path';

test.each([
  ['/trace?lot=L%209', '/trace?lot=L%209'],
  ['/unit/WX4C0000123', '/unit/WX4C0000123'],
  ['/', '/'],
])('%s is a page of ours', (given, path) => {
  expect(safeReturnPath(given)).toBe(path);
});

test.each([
  'https://elsewhere.example/',
  '//elsewhere.example/',
  '/\\elsewhere.example/',
  '/.//elsewhere.example',
  '/x/..//elsewhere.example',
  '/\t/elsewhere.example',
  'javascript:alert(1)',
  'trace',
  '',
  '/sign-in?to=/sign-in',
  '/setup?token=x',
  '/api/trace/where-used',
  ['/a', '/b'],
  undefined,
])('%j leads to the start', (given) => {
  expect(safeReturnPath(given)).toBe('/');
});
