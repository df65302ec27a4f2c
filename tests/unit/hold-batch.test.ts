import { v7 } from 'uuid';
import { expect, it } from 'vitest';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { batchMoment, holdIdInBatch } from '@/lib/domain/holds/hold-batch';

it('a batch gives each unit one id, however often it is asked, and all of them its moment', () => {
  const batch = v7({ msecs: Date.parse('2026-03-02T08:00:00.123Z') });
  expect(new Date(batchMoment(batch)).toISOString()).toBe('2026-03-02T08:00:00.123Z');
  const units = Array.from({ length: 200 }, (_, index) => `WX4C${index}`);
  const ids = units.map((unit) => holdIdInBatch(batch, unit));
  expect(new Set(ids).size).toBe(200);
  expect(units.map((unit) => holdIdInBatch(batch, unit))).toEqual(ids);
  expect(holdIdInBatch(v7(), 'WX4C1')).not.toBe(holdIdInBatch(batch, 'WX4C1'));
  for (const [index, id] of ids.entries()) {
    const event = {
      id,
      type: 'hold.placed',
      at: '2026-03-02T08:00:00.123Z',
      operator: 'qa-1',
      body: { target: { kind: 'unit', id: units[index] }, reason: 'cracks' },
    };
    expect(eventSchema.safeParse(event).error).toBeUndefined();
    expect(batchMoment(id)).toBe(batchMoment(batch));
  }
});
