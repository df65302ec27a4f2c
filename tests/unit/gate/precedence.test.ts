import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '@/lib/domain/gate/judge';
import { inPrecedence, REFUSAL_CODES } from '@/lib/domain/gate/refusals';
import { eventMaker } from '@/tests/support/event-maker';
import { knownOf } from '@/tests/support/known-builder';

const say = eventMaker();

describe('reasons in order of precedence', () => {
  it('names what the unit is before where it stands, and material last', () => {
    const everythingWrong = knownOf({
      units: { W1: { scrapped: true, packedIn: 'CT1', failed: [10] } },
      containers: { CT1: {} },
      slots: { F1: 'R1' },
      items: { R1: { part: 'R-10K' }, J1: { isRetired: true } },
      holds: { 'unit W1': 'H1', 'item R1': 'H2' },
    });
    const event = say.passed('W1', 'PLACE', { operator: 'op-2' }, { used: [{ item: 'J1' }, { item: 'J2' }] });
    expect(judge(event, everythingWrong).map(({ code }) => code)).toEqual([
      'unknown_item',
      'scrapped',
      'already_packed',
      'on_hold',
      'on_hold',
      'open_failure',
      'wrong_step',
      'not_qualified',
      'wrong_part',
      'retired',
    ]);
  });

  it('asks nothing further about what is unknown', () => {
    const reasons = judge(say.passed('W9', 'NOWHERE', { operator: 'op-9' }), knownOf({}));
    expect(reasons.map(({ code }) => code)).toEqual(['unknown_station', 'unknown_operator', 'unknown_unit']);
  });

  it('says the same thing once', () => {
    const known = knownOf({ units: { W1: { passed: [10, 20] } } });
    const event = say.passed('W1', 'TEST', {}, { used: [{ item: 'J1' }, { item: 'J1' }] });
    expect(judge(event, known)).toEqual([{ code: 'unknown_item', item: 'J1' }]);
  });

  it('names every held thing', () => {
    const known = knownOf({
      units: { W1: { passed: [10] } },
      slots: { F1: 'R1' },
      items: { R1: { part: 'C-100N', lot: 'L1' } },
      holds: { 'unit W1': 'H1', 'item R1': 'H2', 'lot L1': 'H3' },
    });
    const reasons = judge(say.passed('W1', 'PLACE'), known);
    expect(reasons.map(({ code, hold }) => [code, hold])).toEqual([
      ['on_hold', 'H1'],
      ['on_hold', 'H2'],
      ['on_hold', 'H3'],
    ]);
  });

  it('is the order of the list of codes, whatever the order found, and stable within a code', () => {
    const refusal = fc.record({
      code: fc.constantFrom(...REFUSAL_CODES),
      unit: fc.integer({ max: 5, min: 1 }),
    });
    fc.assert(
      fc.property(fc.array(refusal), (found) => {
        const ordered = inPrecedence(found);
        const places = ordered.map(({ code }) => REFUSAL_CODES.indexOf(code));
        expect(places).toEqual([...places].sort((a, b) => a - b));
        expect(inPrecedence(ordered)).toEqual(ordered);
        const keys = (list: typeof found) => new Set(list.map((each) => `${each.code} ${each.unit}`));
        expect(ordered.length).toBe(keys(found).size);
      }),
    );
  });
});
