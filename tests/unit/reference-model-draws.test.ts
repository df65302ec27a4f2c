import { describe, expect, it } from 'vitest';
import {
  idOf,
  modelOf,
  mounted,
  passed,
  received,
  removed,
  stamped,
  started,
  unmounted,
} from '@/tests/reference/model/hand-history';
import type { WireEvent } from '@/tests/reference/model/wire-types';

/** The units of an item with relation and certainty, in few words. */
function unitsOf(
  events: readonly WireEvent[],
  query: Parameters<ReturnType<typeof modelOf>['whereUsed']>[0],
) {
  const { units } = modelOf(events).whereUsed(query);
  return units.map(({ unit, relation, certainty }) => `${unit} ${relation} ${certainty}`);
}

const U1 = started(1, '07:00', 'U1');
const R1 = received(2, 'R1', 'reel', { part: 'C-100N', lot: 'L9' });

describe('In a slot: "from its item.mounted until the first later item.mounted in that slot"', () => {
  it('the next mount ends it, and a pass in between drew it', () => {
    const events = [U1, R1, mounted(3, '08:00', 'R1', 'F1'), mounted(4, '09:00', 'R2', 'F1')];
    expect(unitsOf([...events, passed(5, '08:30', 'U1')], { item: 'R1' })).toEqual(['U1 contains certain']);
    expect(unitsOf([...events, passed(5, '09:30', 'U1')], { item: 'R1' })).toEqual([]);
  });

  it('"or item.unmounted of that item from it": the unmount of another item, slot or station ends nothing', () => {
    const events = [
      U1,
      R1,
      mounted(3, '08:00', 'R1', 'F1'),
      unmounted(4, '08:10', 'R2', 'F1'),
      unmounted(5, '08:10', 'R1', 'F2'),
      unmounted(6, '08:10', 'R1', 'F1', { station: 'PRINT' }),
      passed(8, '08:30', 'U1'),
    ];
    expect(unitsOf(events, { item: 'R1' })).toEqual(['U1 contains certain']);
    expect(unitsOf([...events, unmounted(7, '08:20', 'R1', 'F1')], { item: 'R1' })).toEqual([]);
  });

  it('"the interval [from, to); an empty one draws nothing", even with doubt', () => {
    const doubt = { uncertaintyMs: 60_000 };
    const events = [U1, mounted(3, '08:00', 'R1', 'F1', doubt), mounted(4, '08:00', 'R2', 'F1', doubt)];
    expect(unitsOf([...events, passed(5, '08:00', 'U1', doubt)], { item: 'R1' })).toEqual([]);
    expect(unitsOf([...events, passed(5, '08:00', 'U1')], { item: 'R2' })).toEqual(['U1 contains possible']);
  });

  it('"Order is by at, ties by id": of two mounts at one instant the one with the larger id stays', () => {
    const events = [U1, mounted(4, '08:00', 'R1', 'F1'), mounted(3, '08:00', 'R2', 'F1')];
    expect(unitsOf([...events, passed(5, '08:30', 'U1')], { item: 'R1' })).toEqual(['U1 contains certain']);
    expect(unitsOf([...events, passed(5, '08:30', 'U1')], { item: 'R2' })).toEqual([]);
  });

  it('"Who mounts at the very instant of a pass counts for the pass", whatever the ids', () => {
    const events = [U1, mounted(3, '08:00', 'R1', 'F1'), mounted(9, '09:00', 'R2', 'F1')];
    const pass = passed(5, '09:00', 'U1');
    expect(unitsOf([...events, pass], { item: 'R2' })).toEqual(['U1 contains certain']);
    expect(unitsOf([...events, pass], { item: 'R1' })).toEqual([]);
  });
});

describe('Draw', () => {
  it('"or is named by a BOM line of the unit\'s product revision": other reel slots are not drawn from', () => {
    const events = [U1, mounted(3, '08:00', 'R1', 'F3'), passed(5, '08:30', 'U1')];
    expect(unitsOf(events, { item: 'R1' })).toEqual([]);
  });

  it('"holds a kind other than reel and lot (a stencil touches every unit)"', () => {
    const print = { station: 'PRINT' };
    const events = [mounted(3, '08:00', 'ST1', 'stencil', print), passed(5, '08:30', 'U-unknown', print)];
    expect(unitsOf(events, { item: 'ST1' })).toEqual(['U-unknown touched certain']);
  });

  it('a slot that the plant file does not declare counts as holding what was mounted in it', () => {
    const events = [received(2, 'ST1', 'stencil'), passed(5, '08:30', 'U1')];
    expect(unitsOf([...events, mounted(3, '08:00', 'ST1', 'F9')], { item: 'ST1' })).toEqual([
      'U1 touched certain',
    ]);
    expect(
      unitsOf([...events, mounted(3, '08:00', 'never-received', 'F9')], { item: 'never-received' }),
    ).toEqual([]);
  });

  it('"The slot decides, not the part number: a wrong reel in the slot is exactly what must be found"', () => {
    const wrong = received(2, 'R7', 'reel', { part: 'R-10K' });
    const events = [U1, wrong, mounted(3, '08:00', 'R7', 'F1'), passed(5, '08:30', 'U1')];
    expect(modelOf(events).asBuilt('U1').draws).toEqual([
      {
        item: 'R7',
        kind: 'reel',
        part: 'R-10K',
        lot: null,
        positions: ['C1', 'C2'],
        station: 'PLACE',
        slot: 'F1',
        at: '2026-03-02T08:30:00Z',
        certainty: 'certain',
        relation: 'contains',
        by: idOf(5),
        via: [],
      },
    ]);
  });

  it('"result: fail draws too"', () => {
    const failed: WireEvent = {
      ...stamped(5, '08:30', { station: 'PLACE' }),
      type: 'unit.processed',
      body: { unit: 'U1', result: 'fail' },
    };
    expect(unitsOf([U1, mounted(3, '08:00', 'R1', 'F1'), failed], { item: 'R1' })).toEqual([
      'U1 contains certain',
    ]);
  });

  it('"used and part.installed are draws of their own, always certain", whatever the doubt', () => {
    const doubt = { uncertaintyMs: 60_000 };
    const use = passed(5, '08:30', 'U1', doubt, { used: [{ item: 'K1', positions: ['J1'] }] });
    const install: WireEvent = {
      ...stamped(6, '09:00', doubt),
      type: 'part.installed',
      body: { unit: 'U2', position: 'J1', item: 'K1' },
    };
    expect(unitsOf([use, install], { item: 'K1' })).toEqual(['U1 contains certain', 'U2 contains certain']);
  });

  it('"boardLot is a draw of that lot", found by item and by lot', () => {
    const events = [started(1, '07:00', 'U1', { boardLot: 'BL7' })];
    expect(unitsOf(events, { lot: 'BL7' })).toEqual(['U1 contains certain']);
    expect(unitsOf(events, { item: 'BL7' })).toEqual(['U1 contains certain']);
    const [draw] = modelOf(events).asBuilt('U1').draws;
    expect(draw).toMatchObject({ item: 'BL7', kind: 'lot', lot: 'BL7', positions: [], slot: null });
    const booked = [...events, received(2, 'BL7', 'lot', { lot: 'L5' })];
    expect(unitsOf(booked, { lot: 'BL7' })).toEqual(['U1 contains certain']);
    expect(unitsOf(booked, { lot: 'L5' })).toEqual(['U1 contains certain']);
  });
});

describe('Certainty: an interval [08:00, 09:00) and doubts of half a minute', () => {
  const doubt = { uncertaintyMs: 30_000 };
  const verdict = (time: string, extra: { uncertaintyMs?: number }, startedAt?: string) => {
    const facts = startedAt === undefined ? {} : { startedAt: `2026-03-02T${startedAt}Z` };
    const pass = passed(5, time, 'U1', extra, facts);
    const interval = [mounted(3, '08:00', 'R1', 'F1', doubt), unmounted(4, '09:00', 'R1', 'F1', doubt)];
    return unitsOf([U1, ...interval, pass], { item: 'R1' });
  };

  it('"certain when a−u−f ≥ from": the minute after the mount, to the microsecond', () => {
    expect(verdict('08:01:00', doubt)).toEqual(['U1 contains certain']);
    expect(verdict('08:00:59.999999', doubt)).toEqual(['U1 contains possible']);
  });

  it('"and b+u+g < to": the minute before the end is already in doubt', () => {
    expect(verdict('08:58:59.999999', doubt)).toEqual(['U1 contains certain']);
    expect(verdict('08:59:00', doubt)).toEqual(['U1 contains possible']);
  });

  it('"else possible when b+u+f ≥ from"', () => {
    expect(verdict('07:59:00', doubt)).toEqual(['U1 contains possible']);
    expect(verdict('07:58:59.999999', doubt)).toEqual([]);
  });

  it('"and a−u−g < to; else no draw"', () => {
    expect(verdict('09:00:59.999999', doubt)).toEqual(['U1 contains possible']);
    expect(verdict('09:01:00', doubt)).toEqual([]);
  });

  it('"unit.processed spans [startedAt or at, at]": a span over the mount may have drawn', () => {
    expect(verdict('08:10:00', {}, '07:50:00')).toEqual(['U1 contains possible']);
    expect(verdict('09:10:00', {}, '08:50:00')).toEqual(['U1 contains possible']);
  });

  it('a slot that nothing ended has no upper bound', () => {
    const events = [U1, mounted(3, '08:00', 'R1', 'F1'), passed(5, '23:00', 'U1', doubt)];
    expect(unitsOf(events, { item: 'R1' })).toEqual(['U1 contains certain']);
  });
});

describe('Relation', () => {
  const drawn = [U1, R1, mounted(3, '08:00', 'R1', 'F1'), passed(5, '08:30', 'U1')];

  it('"contains while at least one position that the draw supplied has no later part.removed"', () => {
    expect(unitsOf([...drawn, removed(6, '09:00', 'U1', 'C1')], { item: 'R1' })).toEqual([
      'U1 contains certain',
    ]);
  });

  it('"formerly once all were removed", later than the pass', () => {
    const both = [removed(6, '09:00', 'U1', 'C1'), removed(7, '09:00', 'U1', 'C2')];
    const early = [removed(6, '09:00', 'U1', 'C1'), removed(7, '08:20', 'U1', 'C2')];
    expect(unitsOf([...drawn, ...both], { item: 'R1' })).toEqual(['U1 formerly certain']);
    expect(unitsOf([...drawn, ...early], { item: 'R1' })).toEqual(['U1 contains certain']);
  });

  it('"or while it names no position"', () => {
    const use = passed(5, '08:30', 'U1', {}, { used: [{ item: 'K1' }] });
    expect(unitsOf([use, removed(6, '09:00', 'U1', 'J1')], { item: 'K1' })).toEqual(['U1 contains certain']);
  });

  it('"Of every other kind: touched", also when it was used and removed', () => {
    const glue = received(2, 'PJ1', 'paste');
    const use = passed(5, '08:30', 'U1', {}, { used: [{ item: 'PJ1', positions: ['J1'] }] });
    const events = [glue, use, removed(6, '09:00', 'U1', 'J1')];
    expect(unitsOf(events, { item: 'PJ1' })).toEqual(['U1 touched certain']);
  });

  it('"Several draws or paths to one unit: the strongest relation … and the strongest certainty"', () => {
    const events = [
      ...drawn,
      removed(6, '09:00', 'U1', 'C1'),
      removed(7, '09:00', 'U1', 'C2'),
      unmounted(8, '10:00', 'R1', 'F1', { uncertaintyMs: 60_000 }),
      passed(9, '10:00', 'U1'),
    ];
    expect(modelOf(events).asBuilt('U1').draws).toMatchObject([
      { relation: 'formerly', certainty: 'certain' },
      { relation: 'contains', certainty: 'possible' },
    ]);
    expect(unitsOf(events, { item: 'R1' })).toEqual(['U1 contains certain']);
  });
});
