import { describe, expect, it } from 'vitest';
import { itemOf, StationRun, scanOf, unitOf } from '@/tests/support/station-run';

const OFF_ROUTE = { isOnRoute: false };
const NOT_ON_ROUTE = [{ code: 'not_on_route' as const }];
const FAILURE = {
  operation: 'aoi',
  step: 60,
  tries: 1,
  attempts: 3,
  defects: [{ code: 'BRIDGE', position: 'C2', note: null }],
};

describe('at a station that is on no route', () => {
  it('QA signs a unit off, with what the signature says', () => {
    const run = new StationRun({ role: 'qa', picture: OFF_ROUTE }).scan('U-1');
    run.stop('U-1', NOT_ON_ROUTE, scanOf('U-1', { unit: unitOf('U-1', { next: null }) }));
    expect(run.task.step).toBe('signing');
    expect(run.signals).toEqual(['go']);
    run.press({ button: 'sign', meaning: 'Released.' }).press({ button: 'sign', meaning: 'Released.' });
    expect(run.recorded).toEqual([{ type: 'unit.signed', body: { unit: 'U-1', meaning: 'Released.' } }]);
    expect(run.settle().task.step).toBe('idle');
    expect(run.session.given).toMatchObject({ what: 'signed', answer: 'recorded' });
  });

  it('a unit that is started here is done here: the next one may come', () => {
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-9');
    const startable = [{ product: 'WX4', revision: 'C' }];
    run.stop('U-9', [{ code: 'unknown_unit' }], scanOf('U-9', { startable }));
    run.press({ button: 'start', product: 'WX4', revision: 'C' }).settle();
    expect(run.task.step).toBe('idle');
    expect(run.session.given).toMatchObject({ unit: 'U-9', what: 'started', answer: 'recorded' });
  });

  it('QA is told what speaks against a sign-off', () => {
    const signing = [{ code: 'on_hold' as const }];
    const run = new StationRun({ role: 'qa', picture: OFF_ROUTE }).scan('U-1');
    run.stop('U-1', NOT_ON_ROUTE, scanOf('U-1', { unit: unitOf('U-1', { signing }) }));
    expect(run.task).toMatchObject({ step: 'stopped', reasons: signing });
  });

  it('an operator repairs a unit that failed: the part off, another one on', () => {
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-1');
    run.stop('U-1', NOT_ON_ROUTE, scanOf('U-1', { unit: unitOf('U-1', { failure: FAILURE }) }));
    expect(run.task.step).toBe('repairing');
    run.scan('C2').press({ button: 'removed', reason: 'BRIDGE' }).settle();
    run
      .scan('R-1')
      .identify('R-1', scanOf('R-1', { item: itemOf('R-1', 'C-100N', 'reel') }))
      .settle();
    expect(run.recorded).toEqual([
      { type: 'part.removed', body: { unit: 'U-1', position: 'C2', reason: 'BRIDGE' } },
      { type: 'part.installed', body: { unit: 'U-1', position: 'C2', item: 'R-1' } },
    ]);
    expect(run.task).toMatchObject({ repair: { position: null } });
    expect(run.press({ button: 'leave' }).task.step).toBe('idle');
  });

  it('a repair stops another part than the BOM says, and takes one from another unit', () => {
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-1');
    run.stop('U-1', NOT_ON_ROUTE, scanOf('U-1', { unit: unitOf('U-1', { failure: FAILURE, open: ['C2'] }) }));
    run.press({ button: 'repair_position', position: 'C2' }).scan('R-9');
    run.identify('R-9', scanOf('R-9', { item: itemOf('R-9', 'OTHER', 'reel') }));
    expect(run.recorded).toEqual([]);
    expect(run.signals.at(-1)).toBe('stop');
    run.scan('U-5').identify('U-5', scanOf('U-5', { unit: unitOf('U-5') }));
    run.press({ button: 'donor_position', position: 'C1' });
    expect(run.recorded).toEqual([
      {
        type: 'part.installed',
        body: { unit: 'U-1', position: 'C2', fromUnit: 'U-5', fromPosition: 'C1' },
      },
    ]);
  });

  it('a wrong part that is on the board already is told as a fact, whatever it breaks', () => {
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-1');
    run.stop('U-1', NOT_ON_ROUTE, scanOf('U-1', { unit: unitOf('U-1', { failure: FAILURE, open: ['C2'] }) }));
    run.press({ button: 'repair_position', position: 'C2' }).press({ button: 'fitted_already' });
    expect(run.recorded).toEqual([]);
    run.scan('R-9').identify('R-9', scanOf('R-9', { item: itemOf('R-9', 'OTHER', 'reel') }));
    run.press({ button: 'fitted_already' });
    expect(run.effects).toContainEqual({
      kind: 'record',
      tag: 1,
      isFact: true,
      draft: { type: 'part.installed', station: 'S-1', body: { unit: 'U-1', position: 'C2', item: 'R-9' } },
    });
    expect(run.settle().task).toMatchObject({
      repair: { done: [{ position: 'C2', what: 'wrong', source: 'R-9' }] },
    });
  });

  it('a held unit goes to the hold shelf first, and may be repaired all the same', () => {
    const hold = { hold: 'h', reason: 'cracks', automatic: false, at: '2026-03-02T08:00:00.000Z' };
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-1');
    const unit = unitOf('U-1', { failure: FAILURE, holds: [hold] });
    run.stop('U-1', [{ code: 'on_hold' }, ...NOT_ON_ROUTE], scanOf('U-1', { unit }));
    expect(run.task.step).toBe('stopped');
    expect(run.press({ button: 'repair' }).task.step).toBe('repairing');
  });

  it('a repair keeps the next unit for its turn', () => {
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-1');
    run.stop('U-1', NOT_ON_ROUTE, scanOf('U-1', { unit: unitOf('U-1', { failure: FAILURE }) })).scan('U-2');
    run.identify('U-2', scanOf('U-2', { unit: unitOf('U-2') }));
    expect(run.press({ button: 'leave' }).asked.at(-1)).toBe('U-2');
  });

  it('everybody else is told where the unit belongs', () => {
    const run = new StationRun({ picture: OFF_ROUTE }).scan('U-1').stop('U-1', NOT_ON_ROUTE);
    expect(run.task).toMatchObject({ step: 'stopped', reasons: NOT_ON_ROUTE });
  });
});
