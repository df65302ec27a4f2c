import { describe, expect, it } from 'vitest';
import { advanceChangeover } from '@/lib/domain/station/changeover/advance-changeover';
import {
  type Changeover,
  type ChangeoverEffect,
  type ChangeoverInput,
  NEW_CHANGEOVER,
} from '@/lib/domain/station/changeover/changeover';
import { readSlotLabel } from '@/lib/domain/station/changeover/slot-label';
import { slotsFitting } from '@/lib/domain/station/changeover/slots-fitting';
import { type SlotPicture, type StandingItem, slotState, slotsFor } from '@/lib/domain/station/slot-picture';
import { itemOf, scanOf, unitOf } from '@/tests/support/station-run';

const standing: StandingItem = {
  item: 'R-1',
  kind: 'reel',
  part: 'P-1',
  lot: null,
  quantity: 10,
  isHeld: false,
  isRetired: false,
  since: '2026-03-02T08:00:00.000Z',
  oldEnd: null,
};
const wants = (...parts: string[]) => [{ product: 'WX4', revision: 'C', parts }];
const SLOTS: SlotPicture[] = [
  { name: '1-01', holds: 'reel', expected: wants('P-1'), item: standing, state: 'ready' },
  { name: '1-02', holds: 'reel', expected: wants('P-2'), item: null, state: 'empty' },
  { name: '1-03', holds: 'reel', expected: [], item: null, state: 'free' },
  { name: 'profile', holds: 'profile', expected: [], item: null, state: 'empty' },
];

class Run {
  state: Changeover = NEW_CHANGEOVER;
  readonly effects: ChangeoverEffect[] = [];

  give(input: ChangeoverInput): this {
    const context = { station: 'L1', slots: SLOTS, stations: ['L1', 'L2'] };
    const step = advanceChangeover(this.state, input, context);
    this.state = step.state;
    this.effects.push(...step.effects);
    return this;
  }

  get recorded() {
    return this.effects.flatMap((effect) => (effect.kind === 'record' ? effect.drafts : []));
  }
}

const reel = (item: string, part: string) => scanOf(item, { item: itemOf(item, part, 'reel') });

describe('a changeover', () => {
  it('mounts an item whose slot is scanned after it, however fast', () => {
    const run = new Run().give({ kind: 'scanned', code: 'R-2' }).give({ kind: 'scanned', code: 'L1:1-02' });
    run.give({ kind: 'identified', code: 'R-2', scan: reel('R-2', 'P-2') });
    expect(run.recorded).toEqual([
      { type: 'item.mounted', station: 'L1', body: { item: 'R-2', slot: '1-02' } },
    ]);
    run.give({ kind: 'settled', reasons: null });
    expect(run.state.done).toMatchObject({ what: 'mounted', item: 'R-2', slot: '1-02' });
  });

  it('mounts an item that is scanned after its slot, and asks to count what came out', () => {
    const run = new Run().give({ kind: 'scanned', code: '1-01' }).give({ kind: 'scanned', code: 'R-9' });
    run.give({ kind: 'identified', code: 'R-9', scan: reel('R-9', 'P-1') });
    run.give({ kind: 'settled', reasons: null });
    expect(run.state.returned).toEqual({ item: 'R-1', slot: '1-01', knownQuantity: 10 });
    run.give({ kind: 'counted', quantity: 12, method: 'x-ray' }).give({ kind: 'settled', reasons: null });
    expect(run.recorded[1]).toEqual({
      type: 'item.counted',
      station: 'L1',
      body: { item: 'R-1', quantity: 12, method: 'x-ray' },
    });
    expect(run.state).toMatchObject({ returned: null, done: { what: 'counted', item: 'R-1', quantity: 12 } });
  });

  it('splices a reel to the one in its slot, and knows when none is there', () => {
    const run = new Run().give({ kind: 'scanned', code: 'R-9' });
    run.give({ kind: 'identified', code: 'R-9', scan: reel('R-9', 'P-1') });
    run.give({ kind: 'splicing', splice: { greyUnits: 4 } }).give({ kind: 'scanned', code: '1-02' });
    expect(run.state).toMatchObject({ notice: { code: 'nothing_to_splice' }, item: { item: 'R-9' } });
    run.give({ kind: 'scanned', code: '1-01' });
    expect(run.recorded).toEqual([
      {
        type: 'item.spliced',
        station: 'L1',
        body: { from: 'R-1', to: 'R-9', slot: '1-01', greyUnits: 4 },
      },
    ]);
    run.give({ kind: 'settled', reasons: null });
    expect(run.state).toMatchObject({ item: null, splice: null, returned: null, done: { what: 'spliced' } });
  });

  it('says nothing of the grey zone when nobody counted it, and a refused splice empties the hand', () => {
    const run = new Run().give({ kind: 'scanned', code: 'R-9' });
    run.give({ kind: 'identified', code: 'R-9', scan: reel('R-9', 'P-1') });
    run.give({ kind: 'splicing', splice: { greyUnits: null } }).give({ kind: 'scanned', code: '1-01' });
    expect(run.recorded[0]?.body).toEqual({ from: 'R-1', to: 'R-9', slot: '1-01' });
    run.give({ kind: 'settled', reasons: [{ code: 'on_hold' }] });
    expect(run.state).toMatchObject({ item: null, splice: null });
  });

  it('keeps a refused item in the hand for the right slot', () => {
    const run = new Run().give({ kind: 'scanned', code: 'R-2' });
    run.give({ kind: 'identified', code: 'R-2', scan: reel('R-2', 'P-2') });
    run.give({ kind: 'scanned', code: '1-01' }).give({ kind: 'settled', reasons: [{ code: 'wrong_part' }] });
    expect(run.state).toMatchObject({ item: { item: 'R-2' }, stop: { slot: '1-01' } });
    run.give({ kind: 'scanned', code: '1-02' });
    expect(run.recorded.at(-1)?.body).toEqual({ item: 'R-2', slot: '1-02' });
  });

  it('empties the hand at a scan that is no item, and does not take what was scanned behind it', () => {
    for (const [code, scan] of [
      ['X', scanOf('X')],
      ['U-1', scanOf('U-1', { unit: unitOf('U-1') })],
      ['CT-1', scanOf('CT-1', { container: { container: 'CT-1', shipment: null } })],
      ['op-1', scanOf('op-1', { label: { kind: 'badge', badge: 'op-1' } })],
      ['Y', null],
    ] as const) {
      const run = new Run().give({ kind: 'scanned', code: 'R-2' });
      run.give({ kind: 'identified', code: 'R-2', scan: reel('R-2', 'P-2') });
      expect(run.state.item?.item).toBe('R-2');
      run.give({ kind: 'scanned', code }).give({ kind: 'scanned', code: '1-02' });
      run.give({ kind: 'identified', code, scan });
      expect(run.state).toMatchObject({ item: null, slot: null, untaken: ['1-02'], held: [] });
      expect(run.state.stop ?? run.state.notice).not.toBeNull();
      run.give({ kind: 'scanned', code: '1-02' });
      expect(run.recorded).toEqual([]);
      expect(run.state).toMatchObject({ slot: '1-02', untaken: [], stop: null });
    }
  });

  it('empties the hand when no slot may have the item', () => {
    const run = new Run().give({ kind: 'scanned', code: 'R-2' });
    run.give({ kind: 'identified', code: 'R-2', scan: reel('R-2', 'P-2') });
    run.give({ kind: 'scanned', code: '1-02' }).give({ kind: 'settled', reasons: [{ code: 'retired' }] });
    expect(run.state).toMatchObject({ item: null, stop: { item: 'R-2' } });
  });

  it('takes a reel out of the slot where it was said to stand, before it goes in here', () => {
    const mounted = [{ station: 'L2', slot: '7', since: '2026-03-02T08:00:00.000Z' }];
    const standingElsewhere = (kind: 'reel' | 'profile') =>
      scanOf('R-2', { item: { ...itemOf('R-2', 'P-2', kind), mounted } });
    const run = new Run().give({ kind: 'scanned', code: 'R-2' });
    run.give({ kind: 'identified', code: 'R-2', scan: standingElsewhere('reel') });
    run.give({ kind: 'scanned', code: '1-02' });
    expect(run.recorded).toEqual([
      { type: 'item.unmounted', station: 'L2', body: { item: 'R-2', slot: '7' } },
      { type: 'item.mounted', station: 'L1', body: { item: 'R-2', slot: '1-02' } },
    ]);
    run.give({ kind: 'settled', reasons: null });
    expect(run.state.done).toMatchObject({ what: 'mounted', left: [{ station: 'L2', slot: '7' }] });

    // A slot that will refuse it takes nothing away, and one profile serves many ovens.
    const wrong = new Run().give({ kind: 'scanned', code: 'R-2' });
    wrong.give({ kind: 'identified', code: 'R-2', scan: standingElsewhere('reel') });
    wrong.give({ kind: 'scanned', code: '1-01' });
    expect(wrong.recorded.map(({ type }) => type)).toEqual(['item.mounted']);
    const profile = new Run().give({ kind: 'scanned', code: 'R-2' });
    profile.give({ kind: 'identified', code: 'R-2', scan: standingElsewhere('profile') });
    profile.give({ kind: 'scanned', code: 'profile' });
    expect(profile.recorded.map(({ type }) => type)).toEqual(['item.mounted']);
  });

  it('takes an item out', () => {
    const run = new Run().give({ kind: 'took_out', slot: '1-01' }).give({ kind: 'took_out', slot: '1-01' });
    expect(run.recorded).toEqual([
      { type: 'item.unmounted', station: 'L1', body: { item: 'R-1', slot: '1-01' } },
    ]);
  });

  it('says of a scan what it is when it is no item and no slot here', () => {
    const run = new Run().give({ kind: 'scanned', code: 'L2:7' });
    expect(run.state.notice).toMatchObject({ code: 'other_station', station: 'L2' });
    run.give({ kind: 'scanned', code: 'U-1' });
    run.give({ kind: 'identified', code: 'U-1', scan: scanOf('U-1', { unit: unitOf('U-1') }) });
    expect(run.state.notice).toMatchObject({ code: 'is_unit' });
    run.give({ kind: 'scanned', code: 'X' }).give({ kind: 'identified', code: 'X', scan: scanOf('X') });
    expect(run.state.stop?.reasons).toEqual([{ code: 'unknown_item', item: 'X' }]);
    run.give({ kind: 'scanned', code: 'Y' }).give({ kind: 'identified', code: 'Y', scan: null });
    expect(run.state.notice).toMatchObject({ code: 'unanswered' });
    expect(run.recorded).toEqual([]);
  });
});

describe('the label of a slot', () => {
  const here = { station: 'L1', slots: ['1-01', 'a:b'], stations: ['L1', 'L2', 'L2:x'] };
  it.each([
    ['1-01', { station: 'L1', slot: '1-01' }],
    ['L1:1-01', { station: 'L1', slot: '1-01' }],
    ['a:b', { station: 'L1', slot: 'a:b' }],
    ['L1:a:b', { station: 'L1', slot: 'a:b' }],
    ['L2:x:9', { station: 'L2:x', slot: '9' }],
    ['L2:9', { station: 'L2', slot: '9' }],
    ['L1:9', null],
    ['L3:1-01', null],
    ['L2:', null],
    [':1-01', null],
  ])('%s', (code, label) => {
    expect(readSlotLabel(code, here)).toEqual(label);
  });
});

describe('a slot', () => {
  it.each([
    ['ready', wants('P-1'), standing],
    ['wrong', wants('P-2'), standing],
    ['held', wants('P-1'), { ...standing, isHeld: true }],
    ['held', wants('P-1'), { ...standing, isRetired: true }],
    ['wrong', [], { ...standing, kind: 'stencil' as const }],
    ['wrong', [], { ...standing, kind: null }],
    ['ready', [], standing],
    ['empty', wants('P-1'), null],
    ['free', [], null],
  ] as const)('is %s', (state, expected, item) => {
    expect(
      slotState(
        [...expected].map((row) => ({ ...row, parts: [...row.parts] })),
        'reel',
        item,
      ),
    ).toBe(state);
  });

  it('counts for a product when its BOM or its kind says so', () => {
    const slots = slotsFor(SLOTS, { product: 'WX4', revision: 'C' });
    expect(slots.map((slot) => [slot.name, slot.state])).toEqual([
      ['1-01', 'ready'],
      ['1-02', 'empty'],
      ['profile', 'empty'],
    ]);
    const other = slotsFor(SLOTS, { product: 'PSU2', revision: 'B' });
    expect(other.map((slot) => slot.name)).toEqual(['profile']);
  });

  it('is proposed for the part that the BOM wants there, else by its kind', () => {
    expect(slotsFitting(SLOTS, { kind: 'reel', part: 'P-2' })).toEqual(['1-02']);
    expect(slotsFitting(SLOTS, { kind: 'reel', part: 'P-9' })).toEqual(['1-03']);
    expect(slotsFitting(SLOTS, { kind: 'profile', part: null })).toEqual(['profile']);
  });
});
