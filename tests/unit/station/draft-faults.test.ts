import { describe, expect, it } from 'vitest';
import { readDraft } from '@/lib/domain/station/draft-faults';

describe('a form', () => {
  it('is read by the event it becomes', () => {
    const read = readDraft({ type: 'item.counted', body: { item: 'R-1', quantity: 4, method: 'x-ray' } });
    expect(read).toEqual({
      ok: true,
      draft: { type: 'item.counted', body: { item: 'R-1', quantity: 4, method: 'x-ray' } },
    });
  });

  it('has its faults by field', () => {
    const body = { item: ' R-1', kind: 'wheel', quantity: 'many' };
    expect(readDraft({ type: 'item.received', body })).toEqual({
      ok: false,
      faults: { item: 'space_at_end', kind: 'invalid_value', quantity: 'invalid_type' },
    });
    const target = { kind: 'unit', id: '' };
    expect(readDraft({ type: 'hold.placed', body: { target, reason: '' } })).toEqual({
      ok: false,
      faults: { 'target/id': 'empty', reason: 'empty' },
    });
  });
});
