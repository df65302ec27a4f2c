import { describe, expect, it } from 'vitest';
import { itemOf, StationRun, scanOf, unitOf } from '@/tests/support/station-run';

describe('a unit with a go', () => {
  it('passes with the moment of its go, once, and the station is ready', () => {
    const run = new StationRun().scan('U-1').go('U-1').press({ button: 'pass' }).press({ button: 'pass' });
    expect(run.recorded).toEqual([
      {
        type: 'unit.processed',
        body: { unit: 'U-1', result: 'pass', startedAt: '2026-03-02T08:00:02.000Z' },
      },
    ]);
    expect(run.task.step).toBe('idle');
    expect(run.session.given).toMatchObject({ unit: 'U-1', what: 'pass', answer: null });
    expect(run.settle().session.given?.answer).toBe('recorded');
    expect(run.signals).toEqual(['go', 'attention', 'done']);
  });

  it('fails with a usual code, a position of the station and a note', () => {
    const run = new StationRun().scan('U-1').go('U-1').press({ button: 'fail' });
    run.scan('BRIDGE').scan('C2').press({ button: 'note', note: 'under the lid' }).press({ button: 'fail' });
    expect(run.recorded[0]?.body).toMatchObject({
      unit: 'U-1',
      result: 'fail',
      defects: [{ code: 'BRIDGE', position: 'C2', note: 'under the lid' }],
    });
    expect(run.asked).toEqual(['U-1']);
  });

  it('fails with codes that are typed, at no position, or without a code', () => {
    const run = new StationRun().scan('U-1').go('U-1').press({ button: 'fail' });
    run.scan('ODD').identify('ODD', scanOf('ODD')).press({ button: 'position', position: null });
    run.press({ button: 'record_fail' });
    expect(run.recorded[0]?.body).toMatchObject({ defects: [{ code: 'ODD' }] });
    run.scan('U-2').go('U-2').press({ button: 'fail' }).press({ button: 'record_fail' });
    expect(run.recorded[1]?.body).not.toHaveProperty('defects');
  });

  it('takes the commands that are scanned', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('CMD:FAIL').scan('BRIDGE').scan('C1');
    run.scan('cmd:fail').scan('U-2').go('U-2').scan('CMD:PASS');
    expect(run.recorded.map(({ body }) => [body.unit, body.result])).toEqual([
      ['U-1', 'fail'],
      ['U-2', 'pass'],
    ]);
  });

  it('goes back one question at a time, and is put aside without a result', () => {
    const run = new StationRun().scan('U-1').go('U-1').press({ button: 'fail' }).scan('BRIDGE');
    expect(run.press({ button: 'leave' }).task.step).toBe('defect');
    expect(run.press({ button: 'leave' }).task.step).toBe('working');
    expect(run.press({ button: 'leave' }).task.step).toBe('idle');
    expect(run.recorded).toEqual([]);
  });

  it('does not send the moment of the go when the clock was set back since', () => {
    const run = new StationRun().scan('U-1').go('U-1');
    const { task } = run;
    if (task.step !== 'working') throw new Error('no go');
    run.session = {
      ...run.session,
      task: { ...task, work: { ...task.work, startedAt: '2027-01-01T00:00:00.000Z' } },
    };
    expect(run.press({ button: 'pass' }).recorded[0]?.body).not.toHaveProperty('startedAt');
  });
});

describe('a result that the server refuses', () => {
  const problem = {
    id: 'e-1',
    unit: 'U-1',
    type: 'unit.processed' as const,
    reasons: [{ code: 'on_hold' as const }],
  };

  it('stands on the screen until it is read, and holds back what is scanned meanwhile', () => {
    const run = new StationRun().scan('U-1').go('U-1').press({ button: 'pass' }).settle(false);
    run.give({ kind: 'refused', problem }).scan('U-2');
    expect(run.session.given?.answer).toBe('refused');
    expect(run.asked).toEqual(['U-1']);
    expect(run.signals.at(-1)).toBe('stop');
    run.press({ button: 'acknowledge' });
    expect(run.effects).toContainEqual({ kind: 'forget', id: 'e-1' });
    expect(run.asked).toEqual(['U-1', 'U-2']);
  });

  it('is told once', () => {
    const run = new StationRun().give({ kind: 'refused', problem }).give({ kind: 'refused', problem });
    expect(run.session.problems).toHaveLength(1);
  });
});

describe('a no-go', () => {
  it('offers to start a serial that is new here, and then asks again', () => {
    const run = new StationRun().scan('U-9');
    const options = [{ product: 'WX4', revision: 'C' }];
    run.stop('U-9', [{ code: 'unknown_unit', unit: 'U-9' }], scanOf('U-9', { startable: options }));
    expect(run.task).toMatchObject({ step: 'new', options });
    run.scan('LOT-1').identify('LOT-1', scanOf('LOT-1', { item: itemOf('LOT-1', null) }));
    run.press({ button: 'start', product: 'WX4', revision: 'C' });
    run.press({ button: 'start', product: 'WX4', revision: 'C' });
    expect(run.recorded).toEqual([
      {
        type: 'unit.started',
        body: { unit: 'U-9', product: 'WX4', revision: 'C', boardLot: 'LOT-1' },
      },
    ]);
    expect(run.settle().asked.at(-1)).toBe('U-9');
  });

  it('does not offer it to somebody who may not start units', () => {
    const run = new StationRun({ role: 'qa' }).scan('U-9');
    run.stop(
      'U-9',
      [{ code: 'unknown_unit' }],
      scanOf('U-9', { startable: [{ product: 'WX4', revision: 'C' }] }),
    );
    expect(run.task.step).toBe('stopped');
  });

  it('gives way to the next scan', () => {
    const run = new StationRun()
      .scan('U-1')
      .stop('U-1', [{ code: 'wrong_step' }])
      .scan('U-2');
    expect(run.task).toMatchObject({ step: 'asking', unit: 'U-2' });
  });

  it('leads to the repair of an open failure', () => {
    const failure = { operation: 'aoi', step: 60, tries: 1, attempts: 3, defects: [] };
    const scan = scanOf('U-1', { unit: unitOf('U-1', { failure }) });
    const run = new StationRun().scan('U-1').stop('U-1', [{ code: 'open_failure' }], scan);
    expect(run.press({ button: 'repair' }).task.step).toBe('repairing');
  });
});

describe('no answer about a unit', () => {
  it('is told, and asked for again', () => {
    const run = new StationRun().scan('U-1').give({ kind: 'unanswered', unit: 'U-1', why: 'unreachable' });
    expect(run.task).toMatchObject({ step: 'unanswered', why: 'unreachable' });
    run.press({ button: 'retry' });
    expect(run.asked).toEqual(['U-1', 'U-1']);
    expect(run.go('U-1').task.step).toBe('working');
  });
});

describe('a reload', () => {
  it('finds the unit in work again with the moment of its go and what was noted', () => {
    const resumed = {
      startedAt: '2026-03-02T07:00:00.000Z',
      defects: [{ code: 'BRIDGE', position: 'C1' }],
      note: 'n',
      readings: [],
      isFailing: true,
    };
    const run = new StationRun().give({ kind: 'resumed', unit: 'U-1', resumed, waiting: ['U-2'] }).go('U-1');
    expect(run.task).toMatchObject({ step: 'confirming', work: { startedAt: resumed.startedAt, note: 'n' } });
    run.press({ button: 'record_fail' });
    expect(run.recorded[0]?.body).toMatchObject({ startedAt: resumed.startedAt });
    expect(run.asked).toEqual(['U-1', 'U-2']);
  });

  it('only takes up the queue when nothing was in work', () => {
    const run = new StationRun().give({ kind: 'resumed', unit: null, resumed: null, waiting: ['U-2'] });
    expect(run.asked).toEqual(['U-2']);
  });
});
