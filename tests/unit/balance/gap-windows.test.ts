import { expect, it } from 'vitest';
import { gapWindows, type SlotStay } from '@/lib/domain/balance/gap-windows';

const OPEN = Number.POSITIVE_INFINITY;
const stay = (item: string, fromUs: number, toUs: number, slot = '1-01'): SlotStay => ({
  item,
  station: 'PLACE',
  slot,
  fromUs,
  toUs,
});
const lines = (min: number, max: number, stays: readonly SlotStay[]) =>
  gapWindows({ station: 'PLACE', between: { min, max } }, stays).map(
    ({ slot, lowUs, highUs, items }) => `${slot} ${lowUs}..${highUs} ${items.join(' ')}`,
  );

it('a gap makes the reel there, the one before and the one after possible, in every slot of the station', () => {
  const stays = [
    stay('A', 0, 100),
    stay('B', 100, 200),
    stay('C', 200, OPEN),
    stay('S', 50, OPEN, 'stencil'),
  ];
  expect(lines(120, 150, stays)).toEqual(['1-01 120..150 B A C', 'stencil 120..150 S']);
  expect(lines(90, 110, stays)).toEqual(['1-01 90..99 A B', '1-01 100..110 B A C', 'stencil 90..110 S']);
});

it('a gap also covers the time in which the record has nothing in the slot', () => {
  const stays = [stay('A', 100, 200), stay('B', 300, 400)];
  expect(lines(Number.NEGATIVE_INFINITY, OPEN, stays)).toEqual([
    '1-01 -Infinity..99 A',
    '1-01 100..199 A B',
    '1-01 200..299 A B',
    '1-01 300..399 B A',
    '1-01 400..Infinity B',
  ]);
});

it('a gap leaves other stations alone', () => {
  expect(gapWindows({ station: 'OTHER', between: { min: 0, max: 500 } }, [stay('A', 0, 100)])).toEqual([]);
});
