import { describe, expect, it } from 'vitest';
import { timeMarks } from '@/lib/ui/slot-timeline/time-marks';

const span = (from: string, to: string) => ({ fromMs: Date.parse(from), toMs: Date.parse(to) });

describe('marks on the axis of time', () => {
  it('stand at round times of the plant clock, with the day where it changes', () => {
    const marks = timeMarks(span('2026-11-20T20:10:00Z', '2026-11-21T04:10:00Z'), 'Europe/London');
    expect(marks.map(({ text }) => text)).toEqual(
      ['11-20 21:00', '22:00', '23:00', '11-21 00:00', '01:00', '02:00', '03:00', '04:00'], // biome-ignore format: one line
    );
    expect(marks[0]?.ms).toBe(Date.parse('2026-11-20T21:00:00Z'));
  });

  it('are at midnight of the plant, not of Greenwich', () => {
    const marks = timeMarks(span('2026-11-20T00:00:00Z', '2026-11-27T00:00:00Z'), 'Asia/Kolkata');
    expect(marks.map(({ ms }) => new Date(ms).toISOString()).slice(0, 2)).toEqual([
      '2026-11-20T18:30:00.000Z',
      '2026-11-21T18:30:00.000Z',
    ]);
  });

  it('are never too many to be read', () => {
    for (const days of [0.01, 0.1, 1, 3, 7, 31]) {
      const marks = timeMarks({ fromMs: 0, toMs: days * 86_400_000 }, 'UTC');
      expect(marks.length).toBeGreaterThan(1);
      expect(marks.length).toBeLessThanOrEqual(11);
    }
  });
});
