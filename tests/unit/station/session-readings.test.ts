import { describe, expect, it } from 'vitest';
import { type ReadingDraft, readingValue, readingVerdict } from '@/lib/domain/station/session/reading-draft';
import { itemOf, StationRun, scanOf } from '@/tests/support/station-run';

const SPEC = { name: 'height', unit: 'µm', low: 100, high: 140 };
const USUAL = { product: 'WX4', revision: 'C', ...SPEC };
const typed = (text: string, spec: Partial<ReadingDraft> = {}) => ({ ...SPEC, ...spec, text });

describe('readings at a station', () => {
  const started = (usual = [USUAL]) => new StationRun({ picture: { readings: usual } }).scan('U-1').go('U-1');

  it('go with the pass as numbers, with the unit and the limits that were usual; one without a value is left out', () => {
    const run = started([USUAL, { ...USUAL, name: 'bow', unit: 'mm', low: 0, high: 1 }]);
    run.press({ button: 'reading', reading: typed('120,5') }).press({ button: 'pass' });
    expect(run.recorded[0]?.body).toMatchObject({
      result: 'pass',
      readings: [{ name: 'height', value: 120.5, unit: 'µm', low: 100, high: 140 }],
    });
  });

  it('stop a pass beyond a limit, until somebody says that it passes all the same', () => {
    const run = started()
      .press({ button: 'reading', reading: typed('141') })
      .press({ button: 'pass' });
    expect(run.recorded).toEqual([]);
    expect(run.task).toMatchObject({ step: 'working', notice: { code: 'beyond_limits' } });
    expect(run.signals.at(-1)).toBe('stop');
    run.press({ button: 'pass' }).scan('CMD:PASS');
    expect(run.recorded).toEqual([]);
    run.press({ button: 'pass_beyond' });
    expect(run.recorded[0]?.body).toMatchObject({ result: 'pass', readings: [{ value: 141 }] });
  });

  it('go with the fail, which nothing stops', () => {
    const run = started().press({ button: 'reading', reading: typed('99') });
    run.press({ button: 'fail' }).press({ button: 'record_fail' });
    expect(run.recorded[0]?.body).toMatchObject({ result: 'fail', readings: [{ value: 99, low: 100 }] });
  });

  it('may be corrected, and then the pass goes', () => {
    const run = started()
      .press({ button: 'reading', reading: typed('1') })
      .press({ button: 'pass' });
    run.press({ button: 'reading', reading: typed('110') });
    expect(run.task).toMatchObject({ notice: null });
    expect(run.press({ button: 'pass' }).recorded[0]?.body).toMatchObject({ readings: [{ value: 110 }] });
  });

  it('are asked about before parts that are missing, and not again behind them', () => {
    const fits = [{ product: 'WX4', revision: 'C', part: 'J-TB8', item: 'L-0' }];
    const run = new StationRun({ picture: { readings: [USUAL], fits } }).scan('U-1').go('U-1');
    run.press({ button: 'reading', reading: typed('200') }).press({ button: 'pass' });
    expect(run.press({ button: 'pass_beyond' }).task.step).toBe('parts');
    run.scan('L-1').identify('L-1', scanOf('L-1', { item: itemOf('L-1', 'J-TB8') }));
    expect(run.press({ button: 'pass' }).recorded[0]?.body).toMatchObject({ readings: [{ value: 200 }] });
  });

  it('that were added are asked for at the next unit of the product, also while the server is away', () => {
    const torque = { name: 'torque', unit: 'Nm', low: null, high: null };
    const run = started([]).press({ button: 'reading', reading: { ...torque, text: '0.6' } });
    run.press({ button: 'pass' });
    expect(run.session.readings).toEqual([{ product: 'WX4', revision: 'C', ...torque }]);
    run.scan('U-2').go('U-2').press({ button: 'pass' });
    expect(run.recorded[1]?.body).not.toHaveProperty('readings');
  });

  it('come back with the unit after a reload', () => {
    const run = started();
    const resumed = {
      startedAt: '2026-03-02T08:00:00.000Z',
      defects: [],
      note: '',
      readings: [typed('130')],
      isFailing: false,
    };
    const again = new StationRun({ picture: { readings: [USUAL] } });
    again.give({ kind: 'resumed', unit: 'U-1', resumed, waiting: [] }).go('U-1').press({ button: 'pass' });
    expect(run.recorded).toEqual([]);
    expect(again.recorded[0]?.body).toMatchObject({ readings: [{ name: 'height', value: 130 }] });
  });
});

describe('a typed value', () => {
  it.each([
    ['', null],
    [' 12 ', 12],
    ['-0,5', -0.5],
    ['.5', 0.5],
    ['1,234.5', '1,234.5'],
    ['n/a', 'n/a'],
  ])('%j is %j', (text, value) => {
    expect(readingValue(text)).toBe(value);
  });

  it.each([
    [typed(''), 'none'],
    [typed('100'), 'in'],
    [typed('140'), 'in'],
    [typed('99.9'), 'below'],
    [typed('140.1'), 'above'],
    [typed('ok'), 'unclear'],
    [typed('ok', { low: null, high: null }), 'in'],
    [typed('7', { low: null }), 'in'],
  ])('%j is %s', (draft, verdict) => {
    expect(readingVerdict(draft)).toBe(verdict);
  });
});
