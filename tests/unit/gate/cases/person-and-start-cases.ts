import { eventMaker } from '@/tests/support/event-maker';
import { type GateCase, PRINTER_READY } from '@/tests/support/gate-case';

const say = eventMaker();
const wx4 = { unit: 'W1', product: 'WX4', revision: 'C' };
const started = { units: { W1: {} } };
const atPrinter = { ...started, ...PRINTER_READY };

/** Who does it and where, and how a unit begins. */
export const PERSON_AND_START_CASES: GateCase[] = [
  {
    rule: 'a station must be in the plant file',
    given: started,
    when: say.passed('W1', 'NOWHERE'),
    refuses: { code: 'unknown_station', station: 'NOWHERE' },
    goes: { because: 'it is', given: atPrinter, when: say.passed('W1', 'PRINT') },
  },
  {
    rule: 'a station is checked wherever an event names one',
    given: { units: { W1: {} } },
    when: say.signed('W1', { station: 'NOWHERE' }),
    refuses: { code: 'unknown_station', station: 'NOWHERE' },
    goes: { because: 'it names none', when: say.signed('W1') },
  },
  {
    rule: 'who retires a lost device must be in the plant file',
    given: {},
    when: say.deviceRetired('tab-9', { operator: 'op-9' }),
    refuses: { code: 'unknown_operator', operator: 'op-9' },
    goes: {
      because: 'any device may be lost, also one that was never heard of',
      when: say.deviceRetired('tab-9'),
    },
  },
  {
    rule: 'an operator must be in the plant file',
    given: atPrinter,
    when: say.passed('W1', 'PRINT', { operator: 'op-9' }),
    refuses: { code: 'unknown_operator', operator: 'op-9' },
    goes: { because: 'the badge is', when: say.passed('W1', 'PRINT', { operator: 'op-1' }) },
  },
  {
    rule: 'an operator must be qualified for the operation',
    given: atPrinter,
    when: say.passed('W1', 'PRINT', { operator: 'op-2' }),
    refuses: { code: 'not_qualified', operator: 'op-2', operation: 'print' },
    goes: { because: 'a machine did it', when: say.passed('W1', 'PRINT') },
  },
  {
    rule: 'a product revision must be in the plant file',
    given: {},
    when: say.started({ ...wx4, revision: 'D' }),
    refuses: { code: 'unknown_product', product: 'WX4', revision: 'D' },
    goes: { because: 'the revision is', when: say.started(wx4) },
  },
  {
    rule: 'a serial must fit the pattern of its product',
    given: {},
    when: say.started({ ...wx4, unit: 'X1' }),
    refuses: { code: 'serial_pattern_mismatch', unit: 'X1', expected: '^W[0-9]+$' },
    goes: {
      because: 'the product has no pattern',
      when: say.started({ unit: 'X1', product: 'PSU2', revision: 'A' }),
    },
  },
  {
    rule: 'a serial starts once',
    given: started,
    when: say.started(wx4),
    refuses: { code: 'already_started', unit: 'W1' },
    goes: { because: 'it was only mentioned before', given: { units: { W1: { started: false } } } },
  },
  {
    rule: 'a board of a held lot is not started',
    given: { holds: { 'lot B7': 'H1' } },
    when: say.started({ ...wx4, boardLot: 'B7' }),
    refuses: { code: 'on_hold', kind: 'lot', id: 'B7', hold: 'H1', reason: 'cracks' },
    goes: { because: 'another lot is held', given: { holds: { 'lot B8': 'H1' } } },
  },
  {
    rule: 'a board of a held item is not started',
    given: { items: { B7: { kind: 'lot' } }, holds: { 'item B7': 'H1' } },
    when: say.started({ ...wx4, boardLot: 'B7' }),
    refuses: { code: 'on_hold', kind: 'item', id: 'B7', item: 'B7', hold: 'H1', reason: 'cracks' },
    goes: { because: 'nothing is held', given: { items: { B7: { kind: 'lot' } } } },
  },
];
