import { expect, it } from 'vitest';
import { isMoreThanKnown } from '@/lib/ui/shop/count-method';

it.each([
  [237, 236, true],
  [236, 236, false],
  [0, 236, false],
  [1, 0, true],
  [237, null, false],
  [null, 236, false],
])('a count of %s where %s were known is doubted: %s', (count, known, isDoubted) => {
  expect(isMoreThanKnown(count, known)).toBe(isDoubted);
});
