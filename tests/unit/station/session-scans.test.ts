import { describe, expect, it } from 'vitest';
import { itemOf, PICTURE, StationRun, scanOf, unitOf } from '@/tests/support/station-run';

const LOT = scanOf('LOT-1', { item: itemOf('LOT-1', 'J-TB8') });

describe('scans in quick succession', () => {
  it('are checked one after the other, and the second waits for the result of the first', () => {
    const run = new StationRun().scan('U-1').scan('U-2').go('U-1');
    run.identify('U-2', scanOf('U-2', { unit: unitOf('U-2') }));
    expect(run.session.waiting).toEqual(['U-2']);
    run.press({ button: 'pass' });
    expect(run.recorded.map(({ body }) => body.unit)).toEqual(['U-1']);
    expect(run.task).toMatchObject({ step: 'asking', unit: 'U-2' });
  });

  it('never take a no-go away unseen', () => {
    const run = new StationRun()
      .scan('U-1')
      .scan('U-2')
      .stop('U-1', [{ code: 'wrong_step' }]);
    expect(run.task).toMatchObject({ step: 'stopped', unit: 'U-1' });
    expect(run.session.waiting).toEqual(['U-2']);
    expect(run.press({ button: 'acknowledge' }).task).toMatchObject({ step: 'asking', unit: 'U-2' });
  });

  it('leave a no-go standing for a second, however fast the next scan is', () => {
    const run = new StationRun()
      .scan('U-1')
      .stop('U-1', [{ code: 'wrong_step' }])
      .hurry(300)
      .scan('U-2');
    expect(run.task).toMatchObject({ step: 'stopped', unit: 'U-1' });
    expect(run.effects).toContainEqual({ kind: 'tick', afterMs: 1000 });
    expect(run.give({ kind: 'ticked' }).task.step).toBe('stopped');
    expect(run.hurry(700).give({ kind: 'ticked' }).task).toMatchObject({ step: 'asking', unit: 'U-2' });
  });

  it('ask again about a unit that was stopped, also within that second', () => {
    const run = new StationRun()
      .scan('U-1')
      .stop('U-1', [{ code: 'slot_empty' }])
      .hurry(300)
      .scan('U-1');
    expect(run.hurry(700).give({ kind: 'ticked' }).task).toMatchObject({ step: 'asking', unit: 'U-1' });
  });

  it('keep their order behind a no-go when one more is scanned', () => {
    const run = new StationRun()
      .scan('U-1')
      .scan('U-2')
      .stop('U-1', [{ code: 'wrong_step' }])
      .scan('U-3');
    expect(run.task).toMatchObject({ step: 'asking', unit: 'U-2' });
    expect(run.session.waiting).toEqual(['U-3']);
  });

  it('void a pass that is given before the go was there to be seen', () => {
    const run = new StationRun().scan('U-1').scan('CMD:PASS').press({ button: 'pass' }).go('U-1');
    expect(run.recorded).toEqual([]);
    expect(run.signals).toEqual(['attention', 'attention', 'go']);
    expect(run.task.step).toBe('working');
  });

  it('give a pass once, and not to the unit behind it', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('U-2');
    run.scan('CMD:PASS').press({ button: 'pass' }).scan('U-3').press({ button: 'pass' });
    run.identify('U-2', scanOf('U-2', { unit: unitOf('U-2') })).go('U-2');
    expect(run.recorded.map(({ body }) => body.unit)).toEqual(['U-1']);
    expect(run.task).toMatchObject({ step: 'working', work: { unit: 'U-2' } });
  });

  it('count once when they are the same', () => {
    const run = new StationRun().scan('U-1').scan('U-1').go('U-1').scan('U-1');
    expect(run.asked).toEqual(['U-1']);
    expect(run.task).toMatchObject({ step: 'working', notice: { code: 'already_in_work' } });
  });

  it('give the lot before the pass that was scanned behind it', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('LOT-1').scan('CMD:PASS').identify('LOT-1', LOT);
    expect(run.recorded[0]?.body.used).toEqual([{ item: 'LOT-1', positions: ['J1', 'J2'], quantity: 2 }]);
  });

  it('keep a pass that is pressed while a lot is looked up', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('LOT-1').press({ button: 'pass' });
    expect(run.recorded).toEqual([]);
    expect(run.identify('LOT-1', LOT).recorded[0]?.body).toHaveProperty('used');
  });
});

describe('a unit that is scanned while a defect is asked for', () => {
  it.each([
    ['its code', [] as string[]],
    ['its position', ['BRIDGE']],
    ['a last look', ['BRIDGE', 'C1']],
  ])('is the next unit, not %s', (_, before) => {
    const run = new StationRun().scan('U-1').go('U-1').press({ button: 'fail' });
    for (const code of before) run.scan(code);
    run.scan('U-2').identify('U-2', scanOf('U-2', { serialOf: [{ product: 'WX4', revision: 'C' }] }));
    expect(run.session.waiting).toEqual(['U-2']);
    expect(run.recorded).toEqual([]);
  });
});

describe('a unit that is scanned while another one is in work', () => {
  const second = () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('U-2');
    return run.identify('U-2', scanOf('U-2', { unit: unitOf('U-2') }));
  };

  it('has its own verdict at once, and its own sound', () => {
    const run = second();
    expect(run.session.aside).toEqual({ unit: 'U-2', verdict: null });
    expect(run.effects).toContainEqual({ kind: 'ask_aside', unit: 'U-2' });
    expect(run.signals).toEqual(['go', 'attention']);
    const reasons = [{ code: 'wrong_step' as const }];
    run.give({ kind: 'answered_aside', unit: 'U-2', answer: { go: false, reasons, next: null } });
    expect(run.session.aside?.verdict).toEqual({ go: false, reasons });
    expect(run.signals.at(-1)).toBe('stop');
    expect(run.task).toMatchObject({ step: 'working', work: { unit: 'U-1' } });
  });

  it('may also be a go, or have no answer, and an answer about another one is nothing', () => {
    const run = second();
    run.give({ kind: 'answered_aside', unit: 'U-9', answer: null });
    expect(run.session.aside?.verdict).toBeNull();
    run.give({ kind: 'answered_aside', unit: 'U-2', answer: null });
    expect(run.session.aside?.verdict).toBe('unanswered');
    run.scan('U-3').identify('U-3', scanOf('U-3', { unit: unitOf('U-3') }));
    run.give({ kind: 'answered_aside', unit: 'U-3', answer: { go: true, reasons: [], next: null } });
    expect(run.session).toMatchObject({
      aside: { unit: 'U-3', verdict: { go: true } },
      waiting: ['U-2', 'U-3'],
    });
  });

  it.each([
    ['it is understood', (run: StationRun) => run.press({ button: 'acknowledge' })],
    ['it is not to be checked', (run: StationRun) => run.press({ button: 'drop_waiting', unit: 'U-2' })],
    ['the unit in work is scanned', (run: StationRun) => run.scan('U-1')],
    ['the unit in work has its result', (run: StationRun) => run.press({ button: 'pass' })],
  ])('stands beside it until %s', (_, end) => {
    expect(end(second()).session.aside).toBeNull();
  });
});

describe('a scan of something else', () => {
  const badge = scanOf('op-9', { label: { kind: 'badge', badge: 'op-9' } });

  it('is told for what it is, and gives no alarm', () => {
    const run = new StationRun().scan('op-9').stop('op-9', [{ code: 'unknown_unit' }], badge);
    expect(run.task).toMatchObject({ step: 'stopped', about: { scan: { label: { kind: 'badge' } } } });
    expect(run.signals).toEqual(['attention']);
    run.scan('U-1').go('U-1').scan('op-9').identify('op-9', badge);
    expect(run.task).toMatchObject({ step: 'working', notice: { code: 'is_label', scanned: 'op-9' } });
    run.press({ button: 'fail' }).scan('op-9').identify('op-9', badge);
    expect(run.task.step).toBe('defect');
    expect(run.session.waiting).toEqual([]);
  });

  it.each(['unknown_unit', 'scrapped'] as const)('that is %s has no other reason', (code) => {
    const others = [{ code: 'open_failure' as const }, { code: 'not_qualified' as const }];
    const run = new StationRun().scan('U-1').stop('U-1', [{ code }, ...others]);
    expect(run.task).toMatchObject({ step: 'stopped', reasons: [{ code }] });
  });
});

describe('a unit that has passed what is done here', () => {
  const steps = [{ step: 10, operation: 'place', last: 'pass' as const }];
  const repeat = () => new StationRun().scan('U-1').go('U-1', { steps });

  it('gets no go before somebody says that it is to be done again', () => {
    const run = repeat().scan('CMD:PASS').press({ button: 'pass' });
    expect(run.task).toMatchObject({ step: 'repeat', work: { unit: 'U-1' } });
    expect(run.recorded).toEqual([]);
    expect(run.signals).not.toContain('go');
    run.press({ button: 'go_on' });
    expect(run.signals.at(-1)).toBe('go');
    run.press({ button: 'pass' });
    expect(run.recorded).toMatchObject([{ type: 'unit.processed', body: { unit: 'U-1', result: 'pass' } }]);
  });

  it('owes nothing: the next scan is the next unit', () => {
    expect(repeat().scan('U-2').task).toMatchObject({ step: 'asking', unit: 'U-2' });
    expect(repeat().press({ button: 'leave' }).task.step).toBe('idle');
  });

  it('is due when another step of the same operation is owed', () => {
    const twice = [...steps, { step: 20, operation: 'place', last: null }];
    expect(new StationRun().scan('U-1').go('U-1', { steps: twice }).task.step).toBe('working');
  });
});

describe('a scan while a result is owed', () => {
  it('remembers a lot for the units that follow, until another one is scanned', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('LOT-1').identify('LOT-1', LOT);
    run.press({ button: 'pass' }).scan('U-2').go('U-2').scan('LOT-2');
    run.identify('LOT-2', scanOf('LOT-2', { item: itemOf('LOT-2', 'J-TB8') })).press({ button: 'pass' });
    run.scan('U-3').go('U-3').press({ button: 'pass' });
    const items = run.recorded.map(({ body }) => JSON.stringify(body.used));
    expect(items[0]).toContain('LOT-1');
    expect(items[1]).toContain('LOT-2');
    expect(items[2]).toContain('LOT-2');
  });

  it('does not use a part again where it stands already', () => {
    const run = new StationRun()
      .scan('U-1')
      .go('U-1', { fitted: ['J1', 'J2'] })
      .scan('LOT-1');
    run.identify('LOT-1', LOT).press({ button: 'pass' });
    expect(run.recorded[0]?.body).not.toHaveProperty('used');
  });

  it('takes a tool without a position, and refuses material that the BOM does not scan', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('CAR-1');
    run.identify('CAR-1', scanOf('CAR-1', { item: itemOf('CAR-1', null, 'carrier') })).scan('R-7');
    run.identify('R-7', scanOf('R-7', { item: itemOf('R-7', 'C-100N', 'reel') }));
    expect(run.task).toMatchObject({ notice: { code: 'not_on_bom', scanned: 'R-7' } });
    expect(run.press({ button: 'pass' }).recorded[0]?.body.used).toEqual([{ item: 'CAR-1' }]);
  });

  it('asks for the lot of a part that is usual here before the pass', () => {
    const fits = [{ product: 'WX4', revision: 'C', part: 'J-TB8', item: 'LOT-0' }];
    const run = new StationRun({ picture: { fits } }).scan('U-1').go('U-1').press({ button: 'pass' });
    expect(run.task.step).toBe('parts');
    expect(run.recorded).toEqual([]);
    run.scan('LOT-1').identify('LOT-1', LOT).press({ button: 'pass' });
    expect(run.recorded[0]?.body.used).toMatchObject([{ item: 'LOT-1' }]);
    run.scan('U-2').go('U-2').press({ button: 'forget_lot', product: 'WX4', revision: 'C', part: 'J-TB8' });
    run.press({ button: 'pass' }).press({ button: 'pass_without' });
    expect(run.recorded[1]?.body).not.toHaveProperty('used');
  });

  it('asks for a sub-assembly that is usual here before the pass, with a lot to scan or without', () => {
    const joins = [{ product: 'PSU2', revision: 'B' }];
    const run = new StationRun({ picture: { joins } }).scan('U-1').go('U-1').press({ button: 'pass' });
    expect(run.task.step).toBe('parts');
    run.press({ button: 'pass' });
    expect(run.recorded).toEqual([]);
    run.scan('P-1').identify('P-1', scanOf('P-1', { unit: unitOf('P-1', { product: 'PSU2' }) }));
    run.settle().press({ button: 'pass' });
    expect(run.recorded.map(({ type }) => type)).toEqual(['unit.joined', 'unit.processed']);
    run.scan('U-2').go('U-2').press({ button: 'pass' }).press({ button: 'pass_without' });
    expect(run.recorded.map(({ body }) => body.unit)).toEqual(['P-1', 'U-1', 'U-2']);
    run.scan('U-3').go('U-3', { joined: [{ unit: 'P-3', position: 'A1' }] });
    expect(run.press({ button: 'pass' }).recorded).toHaveLength(4);
  });

  it('signs what was put in since the go as no longer missing', () => {
    const cautions = [
      { what: 'missing_inner' as const, product: 'PSU2', position: 'A1' },
      { what: 'empty_position' as const, position: 'C1' },
    ];
    const run = new StationRun({ role: 'admin' }).scan('U-1').go('U-1', { cautions }).scan('P-1');
    run.identify('P-1', scanOf('P-1', { unit: unitOf('P-1', { product: 'PSU2' }) })).settle();
    run.press({ button: 'signing' });
    expect(run.task).toMatchObject({ step: 'signing', about: { unit: { cautions: cautions.slice(1) } } });
  });

  it('puts in a sub-assembly that is not worked on here, before the result', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('P-1');
    run
      .identify('P-1', scanOf('P-1', { unit: unitOf('P-1', { product: 'PSU2' }) }))
      .press({ button: 'pass' });
    expect(run.recorded.map(({ type }) => type)).toEqual(['unit.joined']);
    run.settle();
    expect(run.recorded.map(({ type }) => type)).toEqual(['unit.joined', 'unit.processed']);
  });

  it('asks whether it is a sub-assembly where both are worked on, and loses neither', () => {
    const products = [...PICTURE.products, { product: 'PSU2', revision: 'B' }];
    const run = new StationRun({ picture: { products } }).scan('U-1').go('U-1').scan('P-1').scan('U-2');
    run.identify('P-1', scanOf('P-1', { unit: unitOf('P-1', { product: 'PSU2' }) }));
    expect(run.task).toMatchObject({ question: { unit: 'P-1', position: 'A1' } });
    run.press({ button: 'not_join' }).identify('U-2', scanOf('U-2', { unit: unitOf('U-2') }));
    expect(run.session.waiting).toEqual(['P-1', 'U-2']);
    expect(run.recorded).toEqual([]);
  });

  it('lets go of a sub-assembly that the server refuses', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('P-1');
    run.identify('P-1', scanOf('P-1', { unit: unitOf('P-1', { product: 'PSU2' }) })).settle(false);
    expect(run.task).toMatchObject({ step: 'working', work: { joined: [] }, isJoining: false });
  });

  it('keeps a code that nobody knows for its own no-go', () => {
    const run = new StationRun().scan('U-1').go('U-1').scan('WHAT').identify('WHAT', scanOf('WHAT'));
    expect(run.session.waiting).toEqual(['WHAT']);
    expect(run.press({ button: 'drop_waiting', unit: 'WHAT' }).session.waiting).toEqual([]);
  });
});
