import { describe, expect, it } from 'vitest';
import { isOutsideBom, similarPositions } from '@/lib/domain/station/product-picture';
import { itemOf, PRODUCT, StationRun, scanOf, unitOf } from '@/tests/support/station-run';

const isAsked = { step: 'position', code: 'BRIDGE', strange: 'C9' };

describe('a defect at a position that the BOM does not name', () => {
  const failing = () => new StationRun().scan('U-1').go('U-1').press({ button: 'fail' }).scan('BRIDGE');
  const typed = (position: string) => failing().scan(position).identify(position, scanOf(position));

  it('is asked about, and recorded all the same by one press', () => {
    const run = typed('C9');
    expect(run.task).toMatchObject(isAsked);
    expect(run.signals.at(-1)).toBe('attention');
    run.press({ button: 'position', position: 'C9' }).press({ button: 'record_fail' });
    expect(run.recorded[0]?.body).toMatchObject({ defects: [{ code: 'BRIDGE', position: 'C9' }] });
  });

  it('gives way to another position, scanned or pressed', () => {
    expect(typed('C9').scan('C2').task).toMatchObject({ step: 'confirming' });
    expect(typed('C9').press({ button: 'position', position: 'C1' }).task).toMatchObject({
      step: 'confirming',
      work: { defects: [{ code: 'BRIDGE', position: 'C1' }] },
    });
  });

  it('is not confirmed by a second scan, and Esc leads back to the question where it is', () => {
    const run = typed('C9').scan('C9').identify('C9', scanOf('C9'));
    expect(run.task).toMatchObject(isAsked);
    expect(run.press({ button: 'leave' }).task).toMatchObject({ step: 'position', strange: null });
    expect(run.press({ button: 'leave' }).task.step).toBe('defect');
  });

  it('is not asked about when the BOM names it for another station, or names none', () => {
    expect(typed('J1').task).toMatchObject({ step: 'confirming' });
    expect(isOutsideBom({ ...PRODUCT, lines: [] }, 'C9')).toBe(false);
  });
});

describe('a repair at a position that the BOM does not name', () => {
  const atRepair = () =>
    new StationRun({ picture: { isOnRoute: false } }).scan('U-1').stop(
      'U-1',
      [],
      scanOf('U-1', {
        unit: unitOf('U-1', {
          failure: {
            operation: 'test',
            step: 30,
            tries: 1,
            attempts: 3,
            defects: [{ code: 'LIFTED', position: 'PAD-7', note: null }],
          },
        }),
      }),
    );
  const typed = (position: string) => atRepair().scan(position).identify(position, scanOf(position));

  it('is asked about once', () => {
    const run = typed('C9');
    expect(run.task).toMatchObject({ repair: { position: null, strange: 'C9' } });
    run.press({ button: 'repair_position', position: 'C9' }).press({ button: 'removed', reason: '' });
    expect(run.recorded.map(({ body }) => body)).toEqual([{ unit: 'U-1', position: 'C9' }]);
  });

  it('is not asked about where the failure says that it is there', () => {
    expect(typed('PAD-7').task).toMatchObject({ repair: { position: 'PAD-7', strange: null } });
  });

  it('is left by Esc without leaving the repair, and an item is no position', () => {
    expect(typed('C9').press({ button: 'leave' }).task).toMatchObject({
      step: 'repairing',
      repair: { strange: null },
    });
    const run = atRepair()
      .scan('L-1')
      .identify('L-1', scanOf('L-1', { item: itemOf('L-1', 'C-100N') }));
    expect(run.task).toMatchObject({ notice: { code: 'not_an_item' }, repair: { strange: null } });
  });
});

describe('positions that may have been meant', () => {
  const product = {
    ...PRODUCT,
    lines: [
      { part: 'P', inner: null, positions: ['C1', 'C2', 'C14', 'C114', 'J1'], station: null, slot: null },
    ],
  };

  it.each([
    ['c14', ['C14', 'C1', 'C114']],
    ['C014', ['C14', 'C1', 'C114']],
    ['C 2', ['C2', 'C1']],
    ['K1', ['C1', 'J1']],
    ['XYZ', []],
  ])('of %s are %j', (typed, expected) => {
    expect(similarPositions(product, typed)).toEqual(expected);
  });
});
