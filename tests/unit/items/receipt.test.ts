import { describe, expect, it } from 'vitest';
import { type BookedItem, beginReceipt, takenOver } from '@/lib/domain/items/receipt';
import type { LabelFacts } from '@/lib/domain/scanning/label-facts';

const before: BookedItem = {
  item: 'R-501',
  kind: 'paste',
  part: 'C-100N',
  lot: 'LOT-500',
  supplier: 'Kestrel Components',
  quantity: '4000',
};
const label: LabelFacts = {
  packageId: 'R-502',
  serial: null,
  lot: 'LOT-501',
  part: 'C-100N',
  quantity: null,
  supplier: null,
};

describe('the receipt of an item', () => {
  it('begins empty, as a reel', () => {
    expect(beginReceipt(null, null)).toEqual({ kind: 'reel', part: '', lot: '', supplier: '', quantity: '' });
    expect(takenOver(beginReceipt(null, label), null, label)).toEqual([]);
  });

  it('takes over what the item before was', () => {
    const receipt = beginReceipt(before, null);
    expect(receipt).toEqual({
      kind: 'paste',
      part: 'C-100N',
      lot: 'LOT-500',
      supplier: 'Kestrel Components',
      quantity: '4000',
    });
    expect(takenOver(receipt, before, null)).toEqual(['part', 'lot', 'supplier', 'quantity']);
  });

  it('does not call taken over what was said of this one, empty, or read from its label', () => {
    const receipt = beginReceipt(before, null);
    expect(takenOver({ ...receipt, part: 'R-10K', quantity: '' }, before, null)).toEqual(['lot', 'supplier']);
    const labelled = beginReceipt(before, label);
    expect(labelled).toMatchObject({ part: 'C-100N', lot: 'LOT-501', quantity: '4000' });
    expect(takenOver(labelled, before, label)).toEqual(['supplier', 'quantity']);
    expect(takenOver({ ...receipt, supplier: '' }, { ...before, supplier: '' }, null)).not.toContain(
      'supplier',
    );
  });
});
