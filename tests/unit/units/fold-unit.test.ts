import { describe, expect, it } from 'vitest';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';
import { indexPlant } from '@/lib/domain/plant/plant';
import { plantFileSchema } from '@/lib/domain/plant/plant-file';
import { extendUnit, foldUnit } from '@/lib/domain/units/fold-unit';
import { nextStep, openFailure } from '@/lib/domain/units/progress';
import { signOffOf } from '@/lib/domain/units/sign-off';
import { UNSEEN_UNIT, type UnitState } from '@/lib/domain/units/unit-state';
import { eventMaker } from '@/tests/support/event-maker';

const plant = indexPlant(
  plantFileSchema.parse({
    stations: [
      { code: 'PRINT', operation: 'print' },
      { code: 'AOI', operation: 'aoi' },
      { code: 'TEST', operation: 'test' },
      { code: 'REWORK', operation: 'rework' },
    ],
    products: [
      {
        number: 'WX4',
        revision: 'C',
        route: [
          { step: 30, operation: 'aoi' },
          { step: 10, operation: 'print' },
          { step: 20, operation: 'aoi' },
          { step: 40, operation: 'test', attempts: 2 },
        ],
      },
    ],
  }),
);
const say = eventMaker();
const start = () => say.started({ unit: 'W1', product: 'WX4', revision: 'C' });

function fold(...events: WireEvent[]): UnitState {
  return foldUnit('W1', events.map(toLogged), plant);
}

function nextOf(...events: WireEvent[]): number | null {
  return nextStep('W1', fold(...events), plant)?.step ?? null;
}

const upTo40 = () => [start(), say.passed('W1', 'PRINT'), say.passed('W1', 'AOI'), say.passed('W1', 'AOI')];

describe("a unit's progress along its route", () => {
  it('loses its sign-off by a return, and by nothing else', () => {
    const signed = [...upTo40(), say.signed('W1')];
    expect(fold(...signed, say.passed('W1', 'TEST')).isSigned).toBe(true);
    expect(fold(...signed, say.failed('W1', 'TEST')).isSigned).toBe(true);
    const returned = [...signed, say.returned('W1')];
    expect(fold(...returned).isSigned).toBe(false);
    expect(fold(...returned, say.signed('W1')).isSigned).toBe(true);
  });

  it('says what its sign-off covers: what was owed then, and what was passed since', () => {
    const signed = [...upTo40(), say.signed('W1')];
    const of = (...events: WireEvent[]) => signOffOf('W1', events.map(toLogged), plant);
    expect(of(...upTo40())).toBeNull();
    expect(of(...signed)).toMatchObject({ before: { step: 40, operation: 'test' }, since: [] });
    expect(of(...signed, say.failed('W1', 'TEST'), say.passed('W1', 'TEST'))).toMatchObject({
      since: [{ step: 40, operation: 'test' }],
    });
    expect(of(...signed, say.returned('W1'))).toBeNull();
    expect(of(...upTo40(), say.passed('W1', 'TEST'), say.signed('W1'))?.before).toBeNull();
  });

  it('owes the steps by their numbers, not by their place in the file', () => {
    expect(nextOf(start())).toBe(10);
    expect(nextOf(start(), say.passed('W1', 'PRINT'))).toBe(20);
  });

  it('counts the same operation for one of its steps after the other', () => {
    expect(nextOf(start(), say.passed('W1', 'PRINT'), say.passed('W1', 'AOI'))).toBe(30);
    expect(nextOf(...upTo40())).toBe(40);
  });

  it('lets a retest of a repeated operation count for the step that failed', () => {
    const state = fold(
      start(),
      say.passed('W1', 'PRINT'),
      say.passed('W1', 'AOI'),
      say.failed('W1', 'AOI'),
      say.passed('W1', 'AOI'),
    );
    expect(state.steps).toMatchObject({ 20: { last: 'pass' }, 30: { last: 'pass', tries: 0 } });
  });

  it('owes a step again whose last result is a fail', () => {
    expect(nextOf(...upTo40(), say.passed('W1', 'TEST'), say.failed('W1', 'PRINT'))).toBe(10);
  });

  it('keeps work off the route beside it', () => {
    const state = fold(start(), say.failed('W1', 'REWORK'));
    expect(openFailure(state, plant)).toEqual({ operation: 'rework', step: null });
    expect(nextStep('W1', state, plant)?.step).toBe(10);
  });

  it('knows the product of results that came before their start', () => {
    const [early, late] = [say.passed('W1', 'PRINT'), start()];
    expect(fold(early, late).steps).toEqual({ 10: { last: 'pass', tries: 0 } });
  });
});

describe('attempts', () => {
  it('hold a unit at the fail that uses up the last one', () => {
    const fails = [say.failed('W1', 'TEST'), say.failed('W1', 'TEST')];
    expect(fold(...upTo40(), fails[0] ?? start()).exhausted).toEqual([]);
    expect(fold(...upTo40(), ...fails).exhausted).toEqual([fails[1]?.id]);
  });

  it('are three where the route does not say, and three off the route', () => {
    for (const station of ['PRINT', 'REWORK']) {
      const fails = [1, 2, 3].map(() => say.failed('W1', station));
      expect(fold(start(), ...fails.slice(0, 2)).exhausted).toEqual([]);
      expect(fold(start(), ...fails).exhausted).toEqual([fails[2]?.id]);
    }
  });

  it('begin anew after a pass', () => {
    const results = [say.failed('W1', 'TEST'), say.passed('W1', 'TEST'), say.failed('W1', 'TEST')];
    expect(fold(...upTo40(), ...results).exhausted).toEqual([]);
  });

  it('hold again at every further fail: a release gives one more', () => {
    const fails = [1, 2, 3].map(() => say.failed('W1', 'TEST'));
    expect(fold(...upTo40(), ...fails).exhausted).toEqual([fails[1]?.id, fails[2]?.id]);
  });
});

describe('place', () => {
  it('is the station until the last owed step is passed, then stock', () => {
    expect(fold(start())).toMatchObject({ placing: 'station', lastStation: null });
    expect(fold(...upTo40())).toMatchObject({ placing: 'station', lastStation: 'AOI' });
    expect(fold(...upTo40(), say.passed('W1', 'TEST'))).toMatchObject({ placing: 'stock' });
  });

  it('follows packing, unpacking and return', () => {
    const done = [...upTo40(), say.passed('W1', 'TEST'), say.packed('W1', 'CT1')];
    expect(fold(...done)).toMatchObject({ placing: 'container', container: 'CT1' });
    expect(fold(...done, say.unpacked('W1', 'CT1'))).toMatchObject({ placing: 'stock', container: null });
    expect(fold(...done, say.returned('W1'))).toMatchObject({ placing: 'returned', container: null });
  });

  it('stays with events that place nothing', () => {
    const packed = [start(), say.packed('W1', 'CT1')];
    const more = [say.signed('W1'), say.removed('W1', 'C1'), say.joined('W1', 'W2'), say.held('unit', 'W1')];
    expect(fold(...packed, ...more)).toEqual({ ...fold(...packed), isSigned: true });
  });
});

describe('extending a state by its next event', () => {
  it('gives the same as folding the whole history', () => {
    const history = [
      ...upTo40(),
      say.failed('W1', 'TEST'),
      say.failed('W1', 'TEST'),
      say.passed('W1', 'TEST'),
      say.signed('W1'),
      say.packed('W1', 'CT1'),
      say.unpacked('W1', 'CT1'),
      say.failed('W1', 'REWORK'),
      say.returned('W1'),
      say.scrapped('W1'),
    ].map(toLogged);
    let state = UNSEEN_UNIT;
    history.forEach((event, index) => {
      state = extendUnit('W1', state, event, plant);
      expect(state).toEqual(foldUnit('W1', history.slice(0, index + 1), plant));
    });
  });
});
