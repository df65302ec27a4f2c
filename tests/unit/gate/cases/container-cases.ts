import { eventMaker } from '@/tests/support/event-maker';
import { FINISHED, type GateCase } from '@/tests/support/gate-case';

const say = eventMaker();
const hold = { hold: 'H1', reason: 'cracks' };
const ready = { units: { W1: FINISHED } };
const cartons = { containers: { CT1: {}, CT2: {} } };
const packed = { units: { W1: { ...FINISHED, packedIn: 'CT1' } }, containers: { CT1: {} } };
const shippedCarton = { containers: { CT1: { shipment: 'SH-1' }, CT2: {} } };
const unknown = { code: 'unknown_container' as const, container: 'CT1' };
const filled = { because: 'something went into it', given: cartons };

const PACKING_CASES: GateCase[] = [
  {
    rule: 'a unit is packed once',
    given: packed,
    when: say.packed('W1', 'CT2'),
    refuses: { code: 'already_packed', unit: 'W1', container: 'CT1' },
    goes: { because: 'it was unpacked', given: ready },
  },
  {
    rule: 'a shipped unit is packed again only after its return',
    given: { units: packed.units, containers: { CT1: { shipment: 'SH-1' } } },
    when: say.packed('W1', 'CT2'),
    refuses: { code: 'already_shipped', unit: 'W1', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'it came back', given: ready },
  },
  {
    rule: 'what is inside a unit is not packed by itself',
    given: { units: { W1: FINISHED, W2: FINISHED }, inside: { W1: 'W2' } },
    when: say.packed('W1', 'CT1'),
    refuses: { code: 'inside_another_unit', unit: 'W1', outer: 'W2' },
    goes: { because: 'the outer one is', when: say.packed('W2', 'CT1') },
  },
  {
    rule: 'nothing is packed into a shipped carton',
    given: { ...ready, ...shippedCarton },
    when: say.packed('W1', 'CT1'),
    refuses: { code: 'already_shipped', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'the carton is here', when: say.packed('W1', 'CT2') },
  },
  {
    rule: 'nothing is packed into a carton on a held pallet',
    given: {
      ...ready,
      containers: { CT1: { inside: 'PL1' }, PL1: {}, CT2: {} },
      holds: { 'container PL1': 'H1' },
    },
    when: say.packed('W1', 'CT1'),
    refuses: { code: 'on_hold', kind: 'container', id: 'PL1', ...hold },
    goes: { because: 'the carton is not on it', when: say.packed('W1', 'CT2') },
  },
  {
    rule: 'a unit comes out of the carton that it is in',
    given: { ...packed, containers: { CT1: {}, CT2: {} } },
    when: say.unpacked('W1', 'CT2'),
    refuses: { code: 'not_in_container', unit: 'W1', container: 'CT2' },
    goes: { because: 'it is in that one', when: say.unpacked('W1', 'CT1') },
  },
  {
    rule: 'nothing comes out of a carton that nobody filled',
    given: ready,
    when: say.unpacked('W1', 'CT1'),
    refuses: unknown,
    goes: { because: 'it was filled', given: packed },
  },
  {
    rule: 'nothing comes out of a shipped carton',
    given: { units: packed.units, containers: { CT1: { shipment: 'SH-1' } } },
    when: say.unpacked('W1', 'CT1'),
    refuses: { code: 'already_shipped', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'it is still here', given: packed },
  },
];

const NESTING_CASES: GateCase[] = [
  {
    rule: 'only a filled container is nested',
    given: {},
    when: say.nested('CT1', 'PL1'),
    refuses: unknown,
    goes: filled,
  },
  {
    rule: 'a shipped container is not nested',
    given: shippedCarton,
    when: say.nested('CT1', 'PL1'),
    refuses: { code: 'already_shipped', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'it is here', given: cartons },
  },
  {
    rule: 'nothing is nested into a shipped container',
    given: shippedCarton,
    when: say.nested('CT2', 'CT1'),
    refuses: { code: 'already_shipped', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'it is here', given: cartons },
  },
  {
    rule: 'a held container is not nested',
    given: { ...cartons, holds: { 'container CT1': 'H1' } },
    when: say.nested('CT1', 'CT2'),
    refuses: { code: 'on_hold', kind: 'container', id: 'CT1', ...hold },
    goes: { because: 'it is not held', given: cartons },
  },
  {
    rule: 'a container does not go into itself',
    given: cartons,
    when: say.nested('CT1', 'CT1'),
    refuses: { code: 'would_contain_itself', container: 'CT1', into: 'CT1' },
    goes: { because: 'it goes into another', when: say.nested('CT1', 'CT2') },
  },
  {
    rule: 'a container does not go into what is inside it',
    given: { containers: { CT1: {}, CT2: { inside: 'CT3' }, CT3: { inside: 'CT1' } } },
    when: say.nested('CT1', 'CT2'),
    refuses: { code: 'would_contain_itself', container: 'CT1', into: 'CT2' },
    goes: { because: 'the other is outside', given: { containers: { CT1: {}, CT2: { inside: 'CT3' } } } },
  },
  {
    rule: 'a container comes out of the one that it is in',
    given: { containers: { CT1: { inside: 'PL1' }, PL1: {}, PL2: {} } },
    when: say.unnested('CT1', 'PL2'),
    refuses: { code: 'not_in_container', container: 'CT1', from: 'PL2' },
    goes: { because: 'it is in that one', when: say.unnested('CT1', 'PL1') },
  },
  {
    rule: 'a container comes out of a known one',
    given: { containers: { CT2: { inside: 'CT1' } } },
    when: say.unnested('CT2', 'CT1'),
    refuses: unknown,
    goes: { because: 'it is known', given: { containers: { CT2: { inside: 'CT1' }, CT1: {} } } },
  },
];

/** Cartons and pallets. */
export const CONTAINER_CASES: GateCase[] = [
  ...PACKING_CASES,
  ...NESTING_CASES,
  {
    rule: 'only a filled container is shipped',
    given: {},
    when: say.shipped('CT1'),
    refuses: unknown,
    goes: filled,
  },
  {
    rule: 'only a filled container is held',
    given: {},
    when: say.held('container', 'CT1'),
    refuses: unknown,
    goes: filled,
  },
  {
    rule: 'a container is shipped once',
    given: shippedCarton,
    when: say.shipped('CT1'),
    refuses: { code: 'already_shipped', container: 'CT1', shipment: 'SH-1' },
    goes: { because: 'it is another one', when: say.shipped('CT2') },
  },
  {
    rule: 'a container with a held one inside is not shipped',
    given: { containers: { PL1: {}, CT1: { inside: 'PL1' } }, holds: { 'container CT1': 'H1' } },
    when: say.shipped('PL1'),
    refuses: { code: 'on_hold', kind: 'container', id: 'CT1', ...hold },
    goes: { because: 'the held one is elsewhere', given: { containers: { PL1: {}, CT1: {} } } },
  },
];
