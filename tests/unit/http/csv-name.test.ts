import { expect, it } from 'vitest';
import { csvName } from '@/lib/server/http/csv-name';

const now = new Date('2026-03-20T18:01:30Z');

it.each([
  [{ item: 'RL001187' }, 'where-used RL001187 2026-03-20T1801Z.csv'],
  [{ lot: 'BC-1', station: 'L1-PLACE-1' }, 'where-used BC-1 L1-PLACE-1 2026-03-20T1801Z.csv'],
  [{ item: 'a/b"\r\nSet-Cookie: é' }, 'where-used a_b___Set-Cookie_ _ 2026-03-20T1801Z.csv'],
  [{}, 'where-used 2026-03-20T1801Z.csv'],
])('the file of %j is %s', (question, name) => {
  expect(csvName(question, now)).toBe(name);
});

it('a long code does not make a long name', () => {
  expect(csvName({ item: 'x'.repeat(64), lot: 'y'.repeat(64) }, now).length).toBeLessThan(160);
});

it('the file of a difference says so', () => {
  expect(csvName({ item: 'RL001187' }, now, 'difference')).toBe('difference RL001187 2026-03-20T1801Z.csv');
});
