import { eventMaker } from '@/tests/support/event-maker';
import { type GateCase, PLACER_READY, PRINTER_READY } from '@/tests/support/gate-case';

const say = eventMaker();
const due = { units: { W1: { passed: [10] } } };
const atPlacer = { ...due, ...PLACER_READY };
const place = say.passed('W1', 'PLACE');
const placeWith = (item: string) => say.passed('W1', 'PLACE', {}, { used: [{ item }] });
const hold = { hold: 'H1', reason: 'cracks' };

const SLOT_CASES: GateCase[] = [
  {
    rule: 'a slot that the BOM names is filled',
    given: due,
    when: place,
    refuses: { code: 'slot_empty', station: 'PLACE', slot: 'F1', expected: ['C-100N'] },
    goes: { because: 'it is, and the slot that no BOM names may be empty', given: atPlacer },
  },
  {
    rule: 'a slot for a tool is filled',
    given: { units: { W1: {} } },
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'slot_empty', station: 'PRINT', slot: 'stencil' },
    goes: { because: 'it is', given: { units: { W1: {} }, ...PRINTER_READY } },
  },
  {
    rule: 'a slot holds the part that the BOM wants',
    given: { ...due, slots: { F1: 'R1' }, items: { R1: { part: 'R-10K' } } },
    when: place,
    refuses: {
      code: 'wrong_part',
      station: 'PLACE',
      slot: 'F1',
      item: 'R1',
      part: 'R-10K',
      expected: ['C-100N'],
    },
    goes: { because: 'it does', given: atPlacer },
  },
  {
    rule: 'an item without a part number is the wrong part',
    given: { ...due, slots: { F1: 'R1' }, items: { R1: {} } },
    when: place,
    refuses: {
      code: 'wrong_part',
      station: 'PLACE',
      slot: 'F1',
      item: 'R1',
      part: null,
      expected: ['C-100N'],
    },
    goes: { because: 'it has the right one', given: atPlacer },
  },
  {
    rule: 'what is in a slot is known',
    given: { ...due, slots: { F1: 'R1' } },
    when: place,
    refuses: { code: 'unknown_item', item: 'R1' },
    goes: { because: 'it was received', given: atPlacer },
  },
  {
    rule: 'a held item is not drawn',
    given: { ...atPlacer, holds: { 'item R1': 'H1' } },
    when: place,
    refuses: { code: 'on_hold', kind: 'item', id: 'R1', item: 'R1', ...hold },
    goes: {
      because: 'the held one is in a slot that this product does not draw from',
      given: {
        ...due,
        slots: { F1: 'R1', F2: 'R2' },
        items: { R1: { part: 'C-100N' }, R2: {} },
        holds: { 'item R2': 'H1' },
      },
    },
  },
  {
    rule: 'an item of a held lot is not drawn',
    given: { ...atPlacer, holds: { 'lot L1': 'H1' } },
    when: place,
    refuses: { code: 'on_hold', kind: 'lot', id: 'L1', item: 'R1', ...hold },
    goes: { because: 'another lot is held', given: { ...atPlacer, holds: { 'lot L2': 'H1' } } },
  },
  {
    rule: 'a held tool is not worked with',
    given: { units: { W1: {} }, ...PRINTER_READY, holds: { 'item S1': 'H1' } },
    when: say.passed('W1', 'PRINT'),
    refuses: { code: 'on_hold', kind: 'item', id: 'S1', item: 'S1', ...hold },
    goes: { because: 'it is released', given: { units: { W1: {} }, ...PRINTER_READY } },
  },
];

const withJack = (facts: object) => ({
  ...atPlacer,
  items: { ...PLACER_READY.items, J1: { kind: 'lot' as const, ...facts } },
});
const install = say.installed({ unit: 'W1', position: 'J1', item: 'J1' });

const fitAtC1 = (item: string) => say.installed({ unit: 'W1', position: 'C1', item }, { gate: 'record' });
const withJacks = withJack({ part: 'J-TB8' });

const FITTED_CASES: GateCase[] = [
  {
    rule: 'a part that is on the unit already is one that the BOM allows there',
    given: withJacks,
    when: fitAtC1('J1'),
    refuses: {
      code: 'wrong_part',
      unit: 'W1',
      position: 'C1',
      item: 'J1',
      part: 'J-TB8',
      expected: ['C-100N'],
    },
    goes: { because: 'it is the right one', given: withJacks, when: fitAtC1('R1') },
  },
  {
    rule: 'a part without a number is not what the BOM says',
    given: withJack({}),
    when: fitAtC1('J1'),
    refuses: {
      code: 'wrong_part',
      unit: 'W1',
      position: 'C1',
      item: 'J1',
      part: null,
      expected: ['C-100N'],
    },
    goes: {
      because: 'the contract lets a part go to any position while nobody says that it is a fact',
      when: say.installed({ unit: 'W1', position: 'C1', item: 'J1' }),
    },
  },
];

const NAMED_ITEM_CASES: GateCase[] = [
  {
    rule: 'what a unit used is known',
    given: atPlacer,
    when: placeWith('J1'),
    refuses: { code: 'unknown_item', item: 'J1' },
    goes: { because: 'it was received', given: withJack({}) },
  },
  {
    rule: 'what a unit used was not retired',
    given: withJack({ isRetired: true }),
    when: placeWith('J1'),
    refuses: { code: 'retired', item: 'J1' },
    goes: { because: 'it was not', given: withJack({}) },
  },
  {
    rule: 'what a unit used is not held',
    given: { ...withJack({}), holds: { 'item J1': 'H1' } },
    when: placeWith('J1'),
    refuses: { code: 'on_hold', kind: 'item', id: 'J1', item: 'J1', ...hold },
    goes: { because: 'it is not', given: withJack({}) },
  },
  {
    rule: 'what is installed is known',
    given: due,
    when: install,
    refuses: { code: 'unknown_item', item: 'J1' },
    goes: { because: 'it was received', given: withJack({}) },
  },
  {
    rule: 'what is installed was not retired',
    given: withJack({ isRetired: true }),
    when: install,
    refuses: { code: 'retired', item: 'J1' },
    goes: { because: 'it was not', given: withJack({}) },
  },
  {
    rule: 'what is installed is not of a held lot',
    given: { ...withJack({ lot: 'L9' }), holds: { 'lot L9': 'H1' } },
    when: install,
    refuses: { code: 'on_hold', kind: 'lot', id: 'L9', item: 'J1', ...hold },
    goes: { because: 'it is of another', given: withJack({ lot: 'L8' }) },
  },
];

/** What a unit draws from, and what it names. */
export const MATERIAL_CASES: GateCase[] = [...SLOT_CASES, ...FITTED_CASES, ...NAMED_ITEM_CASES];
