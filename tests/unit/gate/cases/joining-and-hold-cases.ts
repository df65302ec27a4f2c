import { eventMaker, numberedId } from '@/tests/support/event-maker';
import { FINISHED, type GateCase } from '@/tests/support/gate-case';

const say = eventMaker();
const hold = { hold: 'H1', reason: 'cracks' };
const both = { units: { W1: {}, W2: {} } };
const placed = numberedId(1);
const voiding = say.voided(placed);

/** What goes into what, and what takes something back. */
export const JOINING_AND_HOLD_CASES: GateCase[] = [
  {
    rule: 'a unit is inside one other',
    given: { units: { W1: {}, W2: {}, W3: {} }, inside: { W1: 'W3' } },
    when: say.joined('W1', 'W2'),
    refuses: { code: 'already_inside', unit: 'W1', outer: 'W3' },
    goes: { because: 'it is in none', given: both },
  },
  {
    rule: 'a unit does not go into itself',
    given: both,
    when: say.joined('W1', 'W1'),
    refuses: { code: 'would_contain_itself', unit: 'W1', into: 'W1' },
    goes: { because: 'it goes into another', when: say.joined('W1', 'W2') },
  },
  {
    rule: 'a unit does not go into what is inside it',
    given: { ...both, inside: { W2: 'W1' } },
    when: say.joined('W1', 'W2'),
    refuses: { code: 'would_contain_itself', unit: 'W1', into: 'W2' },
    goes: { because: 'the other is free', given: both },
  },
  {
    rule: 'nothing is joined into a held unit',
    given: { ...both, holds: { 'unit W2': 'H1' } },
    when: say.joined('W1', 'W2'),
    refuses: { code: 'on_hold', kind: 'unit', id: 'W2', ...hold },
    goes: { because: 'it is not held', given: both },
  },
  {
    rule: 'nothing is joined into a packed unit',
    given: { units: { W1: {}, W2: { ...FINISHED, packedIn: 'CT1' } }, containers: { CT1: {} } },
    when: say.joined('W1', 'W2'),
    refuses: { code: 'already_packed', unit: 'W2', container: 'CT1' },
    goes: { because: 'it is not packed', given: both },
  },
  {
    rule: 'a unit comes out of the one that it is in',
    given: { units: { W1: {}, W2: {}, W3: {} }, inside: { W1: 'W3' } },
    when: say.separated('W1', 'W2'),
    refuses: { code: 'not_inside', unit: 'W1', from: 'W2' },
    goes: { because: 'it is in that one', when: say.separated('W1', 'W3') },
  },
  {
    rule: 'nothing comes out of a packed unit',
    given: {
      units: { W1: {}, W2: { ...FINISHED, packedIn: 'CT1' } },
      inside: { W1: 'W2' },
      containers: { CT1: {} },
    },
    when: say.separated('W1', 'W2'),
    refuses: { code: 'already_packed', unit: 'W2', container: 'CT1' },
    goes: { because: 'it is not packed', given: { ...both, inside: { W1: 'W2' } } },
  },
  {
    rule: 'no part is taken off a packed unit',
    given: { units: { W1: { ...FINISHED, packedIn: 'CT1' } }, containers: { CT1: {} } },
    when: say.removed('W1', 'C1'),
    refuses: { code: 'already_packed', unit: 'W1', container: 'CT1' },
    goes: { because: 'a held unit may be repaired', given: { ...both, holds: { 'unit W1': 'H1' } } },
  },
  {
    rule: 'a hold must be known',
    given: {},
    when: say.released(placed),
    refuses: { code: 'unknown_hold', hold: placed },
    goes: { because: 'it was placed', given: { placedHolds: { [placed]: 'open' } } },
  },
  {
    rule: 'a hold is released once',
    given: { placedHolds: { [placed]: 'released' } },
    when: say.released(placed),
    refuses: { code: 'hold_already_released', hold: placed },
    goes: { because: 'it is open', given: { placedHolds: { [placed]: 'open' } } },
  },
  {
    rule: 'what is cleared must have broken a rule',
    given: {},
    when: say.exceptionCleared(placed),
    refuses: { code: 'unknown_exception', event: placed },
    goes: { because: 'it broke one', given: { exceptions: { [placed]: 'open' } } },
  },
  {
    rule: 'an exception is cleared once',
    given: { exceptions: { [placed]: 'cleared' } },
    when: say.exceptionCleared(placed),
    refuses: { code: 'exception_already_cleared', event: placed },
    goes: { because: 'it is open', given: { exceptions: { [placed]: 'open' } } },
  },
  {
    rule: 'a void is not voided',
    given: { events: { [placed]: 'event.voided' } },
    when: voiding,
    refuses: { code: 'void_of_void', event: placed },
    goes: { because: 'an event that has not come may be', given: {} },
  },
  {
    rule: 'a void does not void itself',
    given: {},
    when: say.voided(placed, { id: placed }),
    refuses: { code: 'void_of_void', event: placed },
    goes: { because: 'it names another', when: voiding },
  },
];
