import { eventMaker } from '@/tests/support/event-maker';
import { FINISHED, type GateCase } from '@/tests/support/gate-case';
import type { Scene, UnitFacts } from '@/tests/support/known-builder';

const say = eventMaker();
const hold = { hold: 'H1', reason: 'cracks' };
const psu = { product: 'PSU2', revision: 'A' };
const onPallet = { CT1: { inside: 'PL1' }, PL1: {} };

/** Two ways in which a unit leaves: into a carton, and out of the door with the pallet around that carton. */
const WAYS: { way: string; when: GateCase['when']; where: string | null }[] = [
  { way: 'packed', when: say.packed('W1', 'CT1'), where: null },
  { way: 'shipped', when: say.shipped('PL1'), where: 'CT1' },
];

type Fault = { what: string; unit: UnitFacts; more?: Scene; refuses: GateCase['refuses'] };

const FAULTS: Fault[] = [
  {
    what: 'scrap',
    unit: { ...FINISHED, scrapped: true },
    refuses: { code: 'scrapped', unit: 'W1' },
  },
  {
    what: 'a held unit',
    unit: FINISHED,
    more: { holds: { 'unit W1': 'H1' } },
    refuses: { code: 'on_hold', kind: 'unit', id: 'W1', ...hold },
  },
  {
    what: 'a failed unit',
    unit: { passed: [10, 20], failed: [30], signed: true },
    refuses: { code: 'open_failure', unit: 'W1', operation: 'test', step: 30 },
  },
  {
    what: 'a unit that failed off its route',
    unit: { ...FINISHED, failed: ['~rework'] },
    refuses: { code: 'open_failure', unit: 'W1', operation: 'rework', step: null },
  },
  {
    what: 'an unfinished unit',
    unit: { passed: [10, 20], signed: true },
    refuses: { code: 'unfinished', unit: 'W1', step: 30, expected: 'test' },
  },
  {
    what: 'an unsigned unit',
    unit: { passed: [10, 20, 30] },
    refuses: { code: 'unsigned', unit: 'W1' },
  },
  {
    what: 'a unit with a held one inside',
    unit: FINISHED,
    more: { inside: { P1: 'W1' }, units: { P1: { ...psu, passed: [10] } }, holds: { 'unit P1': 'H1' } },
    refuses: { code: 'on_hold', kind: 'unit', id: 'P1', ...hold },
  },
  {
    what: 'a unit with a failed one inside',
    unit: FINISHED,
    more: { inside: { P1: 'W1' }, units: { P1: { ...psu, failed: [10] } } },
    refuses: { code: 'open_failure', unit: 'P1', operation: 'test', step: 10 },
  },
  {
    what: 'a unit with an unfinished one two levels inside',
    unit: FINISHED,
    more: {
      inside: { P1: 'W1', P2: 'P1' },
      units: { P1: { ...psu, passed: [10] }, P2: psu },
    },
    refuses: { code: 'unfinished', unit: 'P2', step: 10, expected: 'test' },
  },
  {
    what: 'a unit with scrap inside',
    unit: FINISHED,
    more: { inside: { P1: 'W1' }, units: { P1: { ...psu, passed: [10], scrapped: true } } },
    refuses: { code: 'scrapped', unit: 'P1' },
  },
];

function leaving(unit: UnitFacts, where: string | null, more: Scene = {}): Scene {
  const packed = where === null ? unit : { ...unit, packedIn: where };
  return { ...more, units: { ...more.units, W1: packed }, containers: onPallet };
}

const FINE: UnitFacts = FINISHED;
const FINE_INSIDE: Scene = { inside: { P1: 'W1' }, units: { P1: { ...psu, passed: [10] } } };

/** Nothing held, failed, unfinished, unsigned or scrapped leaves, inside of another unit or not. */
export const LEAVING_CASES: GateCase[] = WAYS.flatMap(({ way, when, where }) =>
  FAULTS.map(({ what, unit, more, refuses }) => ({
    rule: `${what} is not ${way}`,
    given: leaving(unit, where, more),
    when,
    refuses,
    goes: {
      because: 'nothing is wrong with it or inside it',
      given: leaving(FINE, where, more?.inside === undefined ? {} : FINE_INSIDE),
    },
  })),
);
