import { eventMaker } from '@/tests/support/event-maker';
import type { GateCase } from '@/tests/support/gate-case';

const say = eventMaker();
const reel = { items: { R1: { part: 'C-100N', lot: 'L1' } } };
const unknown = { code: 'unknown_item' as const, item: 'R1' };
const known = { because: 'it was received', given: reel };
const mount = say.mounted('R1', 'PLACE', 'F1');
const hold = { hold: 'H1', reason: 'cracks' };

const MOUNT_CASES: GateCase[] = [
  { rule: 'an item is mounted only when it is known', given: {}, when: mount, refuses: unknown, goes: known },
  {
    rule: 'a retired item is not mounted',
    given: { items: { R1: { part: 'C-100N', isRetired: true } } },
    when: mount,
    refuses: { code: 'retired', item: 'R1' },
    goes: { because: 'it is not retired', given: reel },
  },
  {
    rule: 'a held item is not mounted',
    given: { ...reel, holds: { 'item R1': 'H1' } },
    when: mount,
    refuses: { code: 'on_hold', kind: 'item', id: 'R1', item: 'R1', ...hold },
    goes: { because: 'it is not held', given: reel },
  },
  {
    rule: 'an item of a held lot is not mounted',
    given: { ...reel, holds: { 'lot L1': 'H1' } },
    when: mount,
    refuses: { code: 'on_hold', kind: 'lot', id: 'L1', item: 'R1', ...hold },
    goes: { because: 'another lot is held', given: { ...reel, holds: { 'lot L2': 'H1' } } },
  },
  {
    rule: 'a slot must be in the plant file',
    given: reel,
    when: say.mounted('R1', 'PLACE', 'F9'),
    refuses: { code: 'unknown_slot', station: 'PLACE', slot: 'F9' },
    goes: { because: 'it is', when: mount },
  },
  {
    rule: 'a slot holds one kind',
    given: { items: { S1: { kind: 'stencil', part: 'C-100N' } } },
    when: say.mounted('S1', 'PLACE', 'F1'),
    refuses: {
      code: 'wrong_kind',
      station: 'PLACE',
      slot: 'F1',
      item: 'S1',
      kind: 'stencil',
      expected: 'reel',
    },
    goes: { because: 'it is the slot for it', when: say.mounted('S1', 'PRINT', 'stencil') },
  },
  {
    rule: 'a slot that a BOM names takes only its part',
    given: { items: { R1: { part: 'R-10K' } } },
    when: mount,
    refuses: {
      code: 'wrong_part',
      station: 'PLACE',
      slot: 'F1',
      item: 'R1',
      part: 'R-10K',
      expected: ['C-100N'],
    },
    goes: { because: 'no BOM names the other slot', when: say.mounted('R1', 'PLACE', 'F2') },
  },
];

const UNMOUNT_CASES: GateCase[] = [
  {
    rule: 'an item is unmounted only when it is known',
    given: { slots: { F1: 'R1' } },
    when: say.unmounted('R1', 'PLACE', 'F1'),
    refuses: unknown,
    goes: { because: 'it was received', given: { ...reel, slots: { F1: 'R1' } } },
  },
  {
    rule: 'an item comes out of the slot that it is in',
    given: { ...reel, slots: { F1: 'R2' } },
    when: say.unmounted('R1', 'PLACE', 'F1'),
    refuses: { code: 'not_in_slot', station: 'PLACE', slot: 'F1', item: 'R1' },
    goes: { because: 'it is in it', given: { ...reel, slots: { F1: 'R1' } } },
  },
  {
    rule: 'nothing comes out of a slot that is not in the plant file',
    given: { ...reel, slots: { F1: 'R1' } },
    when: say.unmounted('R1', 'PLACE', 'F9'),
    refuses: { code: 'unknown_slot', station: 'PLACE', slot: 'F9' },
    goes: { because: 'an older plant file had it', given: { ...reel, slots: { F9: 'R1' } } },
  },
];

const reels = { R1: { part: 'C-100N' }, R2: { part: 'C-100N', lot: 'L2' } };
const splice = say.spliced({ from: 'R1', to: 'R2', greyUnits: 3 }, 'PLACE', 'F1');
const spliceGoes = {
  because: 'the one is in the slot and the other was received',
  given: { items: reels, slots: { F1: 'R1' } },
};

const SPLICE_CASES: GateCase[] = [
  {
    rule: 'a reel is spliced only to one that is known',
    given: { items: { R1: reels.R1 }, slots: { F1: 'R1' } },
    when: splice,
    refuses: { code: 'unknown_item', item: 'R2' },
    goes: spliceGoes,
  },
  {
    rule: 'the reel that ends is known',
    given: { items: { R2: reels.R2 }, slots: { F1: 'R1' } },
    when: splice,
    refuses: { code: 'unknown_item', item: 'R1' },
    goes: spliceGoes,
  },
  {
    rule: 'the reel that ends is in the slot',
    given: { items: reels, slots: { F1: 'R2' } },
    when: splice,
    refuses: { code: 'not_in_slot', station: 'PLACE', slot: 'F1', item: 'R1' },
    goes: spliceGoes,
  },
  {
    rule: 'a reel is not spliced to itself',
    given: { items: reels, slots: { F1: 'R1' } },
    when: say.spliced({ from: 'R1', to: 'R1' }, 'PLACE', 'F1'),
    refuses: { code: 'splices_itself', item: 'R1' },
    goes: { because: 'the other one is another', when: splice },
  },
  {
    rule: 'a reel is not spliced to one of another part',
    given: { items: { ...reels, R2: { part: 'R-10K' } }, slots: { F1: 'R1' } },
    when: splice,
    refuses: {
      code: 'wrong_part',
      station: 'PLACE',
      slot: 'F1',
      item: 'R2',
      part: 'R-10K',
      expected: ['C-100N'],
    },
    goes: spliceGoes,
  },
  {
    rule: 'a reel on hold is not drawn from while it may still feed a splice',
    given: {
      units: { W1: { passed: [10] } },
      items: reels,
      slots: { F1: 'R2' },
      grey: { F1: 'R1' },
      holds: { 'item R1': 'H1' },
    },
    when: say.passed('W1', 'PLACE'),
    refuses: { code: 'on_hold', kind: 'item', id: 'R1', item: 'R1', hold: 'H1', reason: 'cracks' },
    goes: {
      because: 'the grey zone is used up',
      given: {
        units: { W1: { passed: [10] } },
        items: reels,
        slots: { F1: 'R2' },
        holds: { 'item R1': 'H1' },
      },
    },
  },
];

/** An item's own life. */
export const ITEM_CASES: GateCase[] = [
  ...MOUNT_CASES,
  ...UNMOUNT_CASES,
  ...SPLICE_CASES,
  {
    rule: 'an item is received once',
    given: reel,
    when: say.received({ item: 'R1', kind: 'reel' }),
    refuses: { code: 'already_received', item: 'R1' },
    goes: { because: 'it is another one', when: say.received({ item: 'R2', kind: 'reel' }) },
  },
  { rule: 'only a known item is counted', given: {}, when: say.counted('R1'), refuses: unknown, goes: known },
  {
    rule: 'only a known item is inspected',
    given: {},
    when: say.inspected('R1'),
    refuses: unknown,
    goes: known,
  },
  { rule: 'only a known item is retired', given: {}, when: say.retired('R1'), refuses: unknown, goes: known },
  {
    rule: 'only a known item is held',
    given: {},
    when: say.held('item', 'R1'),
    refuses: unknown,
    goes: { because: 'a lot may be held before it comes', when: say.held('lot', 'R1') },
  },
];
