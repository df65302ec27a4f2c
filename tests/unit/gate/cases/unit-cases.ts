import { eventMaker } from '@/tests/support/event-maker';
import { FINISHED, type GateCase, PLACER_READY, PRINTER_READY } from '@/tests/support/gate-case';

const say = eventMaker();
const unknown = { code: 'unknown_unit' as const, unit: 'W1' };
const known = { because: 'it was started', given: { units: { W1: {} } } };
const both = { units: { W1: {}, W2: {} } };

/** Every event about a unit wants it started; a mention is not enough. */
const UNKNOWN_UNIT_CASES: GateCase[] = [
  {
    rule: 'a unit is processed',
    given: PRINTER_READY,
    when: say.passed('W1', 'PRINT'),
    refuses: unknown,
    goes: { because: 'it was started', given: { units: { W1: {} }, ...PRINTER_READY } },
  },
  {
    rule: 'a unit is signed',
    given: { units: { W1: { started: false } } },
    when: say.signed('W1'),
    refuses: unknown,
    goes: known,
  },
  { rule: 'a unit is scrapped', given: {}, when: say.scrapped('W1'), refuses: unknown, goes: known },
  { rule: 'a unit is returned', given: {}, when: say.returned('W1'), refuses: unknown, goes: known },
  { rule: 'a part is removed', given: {}, when: say.removed('W1', 'C1'), refuses: unknown, goes: known },
  { rule: 'a unit is held', given: {}, when: say.held('unit', 'W1'), refuses: unknown, goes: known },
  {
    rule: 'a unit is joined',
    given: { units: { W2: {} } },
    when: say.joined('W1', 'W2'),
    refuses: unknown,
    goes: { because: 'both were started', given: both },
  },
  {
    rule: 'a unit is joined into',
    given: { units: { W2: {} } },
    when: say.joined('W2', 'W1'),
    refuses: unknown,
    goes: { because: 'both were started', given: both },
  },
  {
    rule: 'a unit is separated from',
    given: { units: { W2: {} }, inside: { W2: 'W1' } },
    when: say.separated('W2', 'W1'),
    refuses: unknown,
    goes: { because: 'both were started', given: { ...both, inside: { W2: 'W1' } } },
  },
  {
    rule: 'a unit gives a part',
    given: { units: { W2: {} } },
    when: say.installed({ unit: 'W2', position: 'C1', fromUnit: 'W1', fromPosition: 'C2' }),
    refuses: unknown,
    goes: { because: 'both were started', given: both },
  },
  {
    rule: 'a unit is packed',
    given: {},
    when: say.packed('W1', 'CT1'),
    refuses: unknown,
    goes: { because: 'it is ready', given: { units: { W1: FINISHED } } },
  },
  {
    rule: 'a unit is unpacked',
    given: { containers: { CT1: {} } },
    when: say.unpacked('W1', 'CT1'),
    refuses: unknown,
    goes: {
      because: 'it is in there',
      given: { containers: { CT1: {} }, units: { W1: { packedIn: 'CT1' } } },
    },
  },
];

const printer = (facts: object) => ({ units: { W1: facts }, ...PRINTER_READY });
const inCarton = { ...PRINTER_READY, units: { W1: { packedIn: 'CT1' } } };

/** How far a unit is, and what stops it. */
export const UNIT_CASES: GateCase[] = [
  ...UNKNOWN_UNIT_CASES.map((each) => ({ ...each, rule: `${each.rule} only when it is known` })),
  {
    rule: 'scrap is not worked on',
    given: printer({ scrapped: true }),
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'scrapped', unit: 'W1' },
    goes: { because: 'it is none', given: printer({}) },
  },
  {
    rule: 'scrap is not joined',
    given: { units: { W1: { scrapped: true }, W2: {} } },
    when: say.joined('W1', 'W2'),
    refuses: { code: 'scrapped', unit: 'W1' },
    goes: { because: 'it is none', given: both },
  },
  {
    rule: 'a held unit is not worked on',
    given: { ...printer({}), holds: { 'unit W1': 'H1' } },
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'on_hold', kind: 'unit', id: 'W1', hold: 'H1', reason: 'cracks' },
    goes: { because: 'another one is held', given: { ...printer({}), holds: { 'unit W2': 'H1' } } },
  },
  {
    rule: 'a held unit is not signed',
    given: { units: { W1: {} }, holds: { 'unit W1': 'H1' } },
    when: say.signed('W1'),
    refuses: { code: 'on_hold', kind: 'unit', id: 'W1', hold: 'H1', reason: 'cracks' },
    goes: known,
  },
  {
    rule: 'after a fail nothing but the same operation follows',
    given: printer({ passed: [10, 20], failed: [30] }),
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'open_failure', unit: 'W1', operation: 'test', step: 30 },
    goes: { because: 'it is the same operation, even elsewhere', when: say.passed('W1', 'TEST-2') },
  },
  {
    rule: 'a fail off the route is open too',
    given: printer({ passed: [10], failed: ['~rework'] }),
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'open_failure', unit: 'W1', operation: 'rework', step: null },
    goes: { because: 'it was passed since', given: printer({ passed: [10, '~rework'] }) },
  },
  {
    rule: 'a failed unit is not signed',
    given: { units: { W1: { failed: [10] } } },
    when: say.signed('W1'),
    refuses: { code: 'open_failure', unit: 'W1', operation: 'print', step: 10 },
    goes: known,
  },
  {
    rule: 'a failed unit is not joined',
    given: { units: { W1: { failed: [10] }, W2: {} } },
    when: say.joined('W1', 'W2'),
    refuses: { code: 'open_failure', unit: 'W1', operation: 'print', step: 10 },
    goes: { because: 'only the outer one failed', given: { units: { W1: {}, W2: { failed: [10] } } } },
  },
  {
    rule: 'no owed step is left out',
    given: { units: { W1: { passed: [10] } } },
    when: say.passed('W1', 'TEST'),
    refuses: { code: 'wrong_step', unit: 'W1', operation: 'test', step: 20, expected: 'place' },
    goes: { because: 'all before it are passed', given: { units: { W1: { passed: [10, 20] } } } },
  },
  {
    rule: 'an operation must be on the route',
    given: { units: { W1: { passed: [10] } }, ...PLACER_READY },
    when: say.passed('W1', 'REWORK'),
    refuses: {
      code: 'not_on_route',
      unit: 'W1',
      operation: 'rework',
      step: 20,
      expected: 'place',
    },
    goes: { because: 'it is', when: say.passed('W1', 'PLACE') },
  },
  {
    rule: 'a packed unit is not worked on',
    given: { ...inCarton, containers: { CT1: {} } },
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'already_packed', unit: 'W1', container: 'CT1' },
    goes: { because: 'it is out again', given: printer({}) },
  },
  {
    rule: 'what is inside a packed unit is not worked on',
    given: {
      ...PRINTER_READY,
      units: { W1: {}, W2: { packedIn: 'CT1' } },
      inside: { W1: 'W2' },
      containers: { CT1: {} },
    },
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'already_packed', unit: 'W1', container: 'CT1' },
    goes: { because: 'it was taken out', given: { ...PRINTER_READY, units: { W1: {} } } },
  },
  {
    rule: 'a shipped unit is not worked on',
    given: { ...inCarton, containers: { CT1: { shipment: 'SH-1' } } },
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'already_shipped', unit: 'W1', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'it came back', given: printer({}) },
  },
];
