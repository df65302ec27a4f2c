import { describe, expect, it } from 'vitest';
import {
  idOf,
  instantOf,
  joined,
  modelOf,
  mounted,
  passed,
  received,
  removed,
  started,
  unmounted,
  voided,
} from '@/tests/reference/model/hand-history';
import type { WireEvent } from '@/tests/reference/model/wire-types';

function unitsOf(
  events: readonly WireEvent[],
  query: Parameters<ReturnType<typeof modelOf>['whereUsed']>[0],
) {
  const { units } = modelOf(events).whereUsed(query);
  return units.map(({ unit, relation, certainty }) => `${unit} ${relation} ${certainty}`);
}

const DRAWN = [
  started(1, '07:00', 'U1'),
  received(2, 'R1', 'reel', { part: 'C-100N', lot: 'L9' }),
  mounted(3, '08:00', 'R1', 'F1'),
  passed(5, '08:30', 'U1', { operator: 'op-1' }),
];
const FOUND = ['U1 contains certain'];

describe('Void', () => {
  it('"names any event but a void": the named event loses all effect', () => {
    expect(unitsOf([...DRAWN, voided(9, '12:00', idOf(3))], { item: 'R1' })).toEqual([]);
    expect(unitsOf([...DRAWN, voided(9, '12:00', idOf(5))], { item: 'R1' })).toEqual([]);
  });

  it('a void that names a void has none', () => {
    const events = [voided(9, '12:00', idOf(3)), voided(10, '12:00', idOf(9))];
    expect(unitsOf([...DRAWN, ...events], { item: 'R1' })).toEqual([]);
  });

  it('"it may arrive before the event that it names", and may be dated before it', () => {
    expect(unitsOf([voided(9, '05:00', idOf(5)), ...DRAWN], { item: 'R1' })).toEqual([]);
  });

  it('the void of an unmount leaves the item in its slot', () => {
    const events = [...DRAWN, unmounted(6, '08:10', 'R1', 'F1')];
    expect(unitsOf(events, { item: 'R1' })).toEqual([]);
    expect(unitsOf([...events, voided(9, '12:00', idOf(6))], { item: 'R1' })).toEqual(FOUND);
  });
});

describe('GET /api/trace/where-used', () => {
  it('"lot means every item received with that lot"; part likewise', () => {
    expect(unitsOf(DRAWN, { lot: 'L9' })).toEqual(FOUND);
    expect(unitsOf(DRAWN, { part: 'C-100N' })).toEqual(FOUND);
    const corrected = { ...received(8, 'R1', 'reel', { lot: 'L8' }), at: instantOf('23:00') };
    expect(unitsOf([...DRAWN, corrected], { lot: 'L9' })).toEqual([]);
    expect(unitsOf([...DRAWN, corrected], { lot: 'L8' })).toEqual(FOUND);
  });

  it('"station, operator, from, to as further conditions on the same draw"', () => {
    const other = passed(6, '09:30', 'U1', { station: 'PRINT', operator: 'op-2' });
    const events = [...DRAWN, other];
    expect(unitsOf(events, { item: 'R1', station: 'PLACE', operator: 'op-1' })).toEqual(FOUND);
    expect(unitsOf(events, { item: 'R1', operator: 'op-2' })).toEqual([]);
    expect(unitsOf(events, { item: 'R1', from: instantOf('09:00') })).toEqual([]);
  });

  it('from and to include their own instants and widen by the doubt', () => {
    const bounds = { item: 'R1', from: instantOf('08:30'), to: instantOf('08:30') };
    expect(unitsOf(DRAWN, bounds)).toEqual(FOUND);
    const doubtful = [...DRAWN.slice(0, 3), passed(5, '08:29', 'U1', { uncertaintyMs: 60_000 })];
    expect(unitsOf(doubtful, bounds)).toEqual(['U1 contains possible']);
    expect(
      unitsOf(doubtful, { ...bounds, from: instantOf('08:30:00.000001'), to: instantOf('09:00') }),
    ).toEqual([]);
  });

  it('"Times are RFC 3339 with an offset": other offsets are the same instants', () => {
    const from = '2026-03-02T09:30:00+01:00';
    const to = '2026-03-02T03:00:00.000-05:30';
    expect(unitsOf(DRAWN, { item: 'R1', from, to })).toEqual(FOUND);
  });

  it('"or, without item, lot and part, on the same unit.processed": touched, outer units included', () => {
    const events = [...DRAWN, joined(7, '10:00', 'U1', 'M1')];
    const expected = ['M1 touched certain', 'U1 touched certain'];
    expect(unitsOf(events, { station: 'PLACE', operator: 'op-1' })).toEqual(expected);
    expect(unitsOf(events, { station: 'PRINT' })).toEqual([]);
  });

  it('"place=…, relation=…, certainty=… filter"', () => {
    expect(unitsOf(DRAWN, { item: 'R1', relation: ['contains'], certainty: ['certain'] })).toEqual(FOUND);
    expect(unitsOf(DRAWN, { item: 'R1', relation: ['formerly', 'touched'] })).toEqual([]);
    expect(unitsOf(DRAWN, { item: 'R1', certainty: ['possible'] })).toEqual([]);
    expect(unitsOf(DRAWN, { item: 'R1', place: ['station'] })).toEqual(FOUND);
    expect(unitsOf(DRAWN, { item: 'R1', place: ['shipped'] })).toEqual([]);
  });

  it('"Sorted by unit", by code point', () => {
    const events = ['😀', 'Ａ', 'b', 'B'].map((unit, index) =>
      started(index + 1, '07:00', unit, { boardLot: 'BL7' }),
    );
    const { units } = modelOf(events).whereUsed({ lot: 'BL7' });
    expect(units.map(({ unit }) => unit)).toEqual(['B', 'b', 'Ａ', '😀']);
  });

  it('product and revision are those of the last unit.started, and decide the slots of every pass', () => {
    const again = started(8, '09:00', 'U1', { product: 'PSU2', revision: 'A' });
    expect(unitsOf([...DRAWN, again], { item: 'R1' })).toEqual([]);
    expect(modelOf([...DRAWN, again]).asBuilt('U1')).toMatchObject({ product: 'PSU2', revision: 'A' });
  });
});

describe('GET /api/trace/as-built', () => {
  it('"with at, as the record stood about that moment": what is dated up to it, voids whenever', () => {
    const events = [...DRAWN, removed(6, '09:00', 'U1', 'C1'), removed(7, '09:00', 'U1', 'C2')];
    const relationAt = (time: string, ...more: WireEvent[]) =>
      modelOf([...events, ...more])
        .asBuilt('U1', instantOf(time))
        .draws.map(({ relation }) => relation);
    expect(relationAt('08:29')).toEqual([]);
    expect(relationAt('08:30')).toEqual(['contains']);
    expect(relationAt('09:00')).toEqual(['formerly']);
    expect(relationAt('09:00', voided(9, '12:00', idOf(6)))).toEqual(['contains']);
  });

  it('lists the events of the unit in order, "voided ones marked"', () => {
    const events = modelOf([...DRAWN, voided(9, '12:00', idOf(5))]).asBuilt('U1').events;
    expect(events.map(({ id, voided }) => [id, voided])).toEqual([
      [idOf(1), false],
      [idOf(5), true],
    ]);
  });

  it('lists children and parents with the end of a join', () => {
    const model = modelOf([...DRAWN, joined(7, '10:00', 'U1', 'M1')]);
    expect(model.asBuilt('U1').parents).toMatchObject([{ unit: 'M1', position: 'A1', until: null }]);
    expect(model.asBuilt('M1').children).toMatchObject([{ unit: 'U1', by: idOf(7), endedBy: null }]);
  });
});

describe('The same id', () => {
  it('twice counts once, the first content standing', () => {
    const model = modelOf([...DRAWN, ...DRAWN, passed(5, '08:30', 'U2')]);
    expect(model.whereUsed({ item: 'R1' }).counts.units).toBe(1);
    expect(model.asBuilt('U2').events).toEqual([]);
  });
});
