import { describe, expect, it } from 'vitest';
import { instantOnPlantClock, plantClockAt } from '@/lib/ui/plant-clock';

const LONDON = 'Europe/London';

describe('the plant clock', () => {
  it.each([
    ['winter', '2026-01-15T08:15', '2026-01-15T08:15:00.000Z'],
    ['summer', '2026-07-15T08:15', '2026-07-15T07:15:00.000Z'],
    ['just before summer', '2026-03-29T00:59', '2026-03-29T00:59:00.000Z'],
    ['skipped by summer', '2026-03-29T01:30', '2026-03-29T01:30:00.000Z'],
    ['just after the jump', '2026-03-29T02:00', '2026-03-29T01:00:00.000Z'],
    ['shown twice', '2026-10-25T01:30', '2026-10-25T00:30:00.000Z'],
    ['with seconds', '2026-07-15T08:15:30', '2026-07-15T07:15:30.000Z'],
  ])('reads a local time: %s', (_, local, instant) => {
    expect(instantOnPlantClock(local, LONDON)).toBe(instant);
  });

  it('refuses what is no local time', () => {
    for (const text of ['', 'noon', '2026-13-01T00:00', '2026-01-15T08:15Z'])
      expect(instantOnPlantClock(text, LONDON)).toBeNull();
  });

  it('gives back what it read', () => {
    for (const zone of ['UTC', LONDON, 'Asia/Kathmandu', 'America/St_Johns'])
      for (const local of ['2026-01-15T08:15', '2026-07-15T23:59'])
        expect(plantClockAt(instantOnPlantClock(local, zone) ?? '', zone)).toBe(local);
  });
});
