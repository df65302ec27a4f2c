import { describe, expect, it } from 'vitest';
import {
  joined,
  modelOf,
  mounted,
  passed,
  received,
  removed,
  salvaged,
  separated,
  started,
} from '@/tests/reference/model/hand-history';
import type { WireEvent } from '@/tests/reference/model/wire-types';

/** The answer for the item K1, in few words. */
function answerOf(...events: readonly WireEvent[]) {
  const { units } = modelOf(events).whereUsed({ item: 'K1' });
  return units.map(({ unit, relation, through }) => [unit, relation, ...through].join(' '));
}

const USED = passed(1, '08:00', 'U1', {}, { used: [{ item: 'K1', positions: ['J1'] }] });

describe('Outer units', () => {
  it('"it contains it if both still hold"; "Inner and outer units are both listed"', () => {
    expect(answerOf(USED, joined(2, '09:00', 'U1', 'M1'))).toEqual(['M1 contains U1', 'U1 contains']);
  });

  it('"at a moment when the inner one held the item": not when the join ended before the draw', () => {
    const events = [joined(2, '07:00', 'U1', 'M1'), separated(3, '08:00', 'U1', 'M1')];
    expect(answerOf(USED, ...events)).toEqual(['M1 formerly U1', 'U1 contains']);
    const earlier = [joined(2, '07:00', 'U1', 'M1'), separated(3, '07:59', 'U1', 'M1')];
    expect(answerOf(USED, ...earlier)).toEqual(['U1 contains']);
  });

  it('not when the part was removed before the join', () => {
    const events = [removed(2, '08:30', 'U1', 'J1'), joined(3, '09:00', 'U1', 'M1')];
    expect(answerOf(USED, ...events)).toEqual(['U1 formerly']);
  });

  it('"else formerly": the part was removed while it was inside', () => {
    const events = [joined(2, '09:00', 'U1', 'M1'), removed(3, '10:00', 'U1', 'J1')];
    expect(answerOf(USED, ...events)).toEqual(['M1 formerly U1', 'U1 formerly']);
  });

  it('"from unit.joined to unit.separated": a separation from another unit ends nothing', () => {
    const events = [joined(2, '09:00', 'U1', 'M1'), separated(3, '10:00', 'U1', 'M2')];
    expect(answerOf(USED, ...events)).toEqual(['M1 contains U1', 'U1 contains']);
  });

  it('"touched stays touched"', () => {
    const stencil = received(3, 'K1', 'stencil');
    const events = [stencil, joined(2, '09:00', 'U1', 'M1'), separated(4, '10:00', 'U1', 'M1')];
    expect(answerOf(USED, ...events)).toEqual(['M1 touched U1', 'U1 touched']);
  });

  it('"through lists the inner units, outermost first"', () => {
    const events = [joined(2, '09:00', 'U1', 'M1'), joined(3, '09:30', 'M1', 'X1')];
    expect(answerOf(USED, ...events)).toEqual(['M1 contains U1', 'U1 contains', 'X1 contains M1 U1']);
  });

  it('the whole chain must share a moment', () => {
    const events = [
      joined(2, '09:00', 'U1', 'M1'),
      separated(3, '10:00', 'U1', 'M1'),
      joined(4, '11:00', 'M1', 'X1'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['M1 formerly U1', 'U1 contains']);
  });

  it('the outermost holds it no longer once a link in the middle is undone', () => {
    const events = [
      joined(2, '09:00', 'U1', 'M1'),
      joined(3, '09:30', 'M1', 'X1'),
      separated(4, '10:00', 'U1', 'M1'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['M1 formerly U1', 'U1 contains', 'X1 formerly M1 U1']);
  });

  it('an outermost that came after the part was removed never held it', () => {
    const events = [
      joined(2, '09:00', 'U1', 'M1'),
      removed(3, '09:15', 'U1', 'J1'),
      joined(4, '09:30', 'M1', 'X1'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['M1 formerly U1', 'U1 formerly']);
  });

  it('a draw of two positions is held until the second is removed', () => {
    const used = passed(1, '08:00', 'U1', {}, { used: [{ item: 'K1', positions: ['C1', 'C2'] }] });
    const removals = [removed(2, '09:00', 'U1', 'C1'), removed(3, '10:00', 'U1', 'C2')];
    expect(answerOf(used, ...removals, joined(4, '09:30', 'U1', 'M1'))).toEqual([
      'M1 formerly U1',
      'U1 formerly',
    ]);
    expect(answerOf(used, ...removals, joined(4, '10:30', 'U1', 'M1'))).toEqual(['U1 formerly']);
  });

  it('of paths as strong as each other the shortest is told, then the first in order of codes', () => {
    const both = [joined(2, '09:00', 'U1', 'M1'), joined(3, '09:00', 'U1', 'M2')];
    const outer = [joined(4, '09:30', 'M2', 'X1'), joined(5, '09:30', 'M1', 'X1')];
    const direct = joined(6, '10:00', 'U1', 'X1');
    expect(answerOf(USED, ...both, ...outer)).toContain('X1 contains M1 U1');
    expect(answerOf(USED, ...both, ...outer, direct)).toContain('X1 contains U1');
  });

  it('of paths with the same relation the more certain is told', () => {
    const doubt = { uncertaintyMs: 60_000 };
    const events = [
      started(2, '07:00', 'U1'),
      mounted(3, '08:00', 'K1', 'F1'),
      passed(4, '08:00', 'U1', doubt),
      passed(5, '08:30', 'U2', {}, { used: [{ item: 'K1' }] }),
      joined(6, '09:00', 'U1', 'M1'),
      joined(7, '09:00', 'U2', 'M1'),
    ];
    expect(answerOf(...events)).toEqual(['M1 contains U2', 'U1 contains', 'U2 contains']);
  });

  it('of several paths the one with the strongest relation is told, though it is longer', () => {
    const events = [
      joined(2, '09:00', 'U1', 'X1'),
      separated(3, '10:00', 'U1', 'X1'),
      joined(4, '11:00', 'U1', 'M1'),
      joined(5, '11:00', 'M1', 'X1'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['M1 contains U1', 'U1 contains', 'X1 contains M1 U1']);
  });

  it('a ring of joins ends, each unit at most once', () => {
    const events = [joined(2, '09:00', 'U1', 'M1'), joined(3, '09:30', 'M1', 'U1')];
    expect(answerOf(USED, ...events)).toEqual(['M1 contains U1', 'U1 contains']);
  });
});

describe('Salvage', () => {
  it('"carries the draws that supplied that position"; the donor held it formerly', () => {
    const events = [removed(2, '09:00', 'U1', 'J1'), salvaged(3, '10:00', 'U1', 'J1', 'U2')];
    expect(answerOf(USED, ...events)).toEqual(['U1 formerly', 'U2 contains']);
  });

  it('"until its last removal before the installation": what came into the donor after it stays there', () => {
    const later = passed(4, '09:30', 'U1', {}, { used: [{ item: 'K2', positions: ['J1'] }] });
    const events = [USED, removed(2, '09:00', 'U1', 'J1'), later, salvaged(3, '10:00', 'U1', 'J1', 'U2')];
    expect(modelOf(events).asBuilt('U2').draws).toMatchObject([{ item: 'K1' }]);
    const withoutRemoval = events.filter(({ type }) => type !== 'part.removed');
    expect(modelOf(withoutRemoval).asBuilt('U2').draws).toMatchObject([{ item: 'K1' }, { item: 'K2' }]);
  });

  it('keeps where, when and by whom it was drawn, and only the position that it went to', () => {
    const events = [USED, removed(2, '09:00', 'U1', 'J1'), salvaged(3, '10:00', 'U1', 'J1', 'U2')];
    const [draw] = modelOf(events).asBuilt('U2').draws;
    expect(draw).toMatchObject({ station: 'PLACE', at: USED.at, by: USED.id, positions: ['J1'] });
  });

  it('carries nothing of other positions', () => {
    expect(answerOf(USED, salvaged(3, '10:00', 'U1', 'C1', 'U2'))).toEqual(['U1 contains']);
  });

  it('does not hand on what came into the middle unit after its last removal', () => {
    const events = [
      removed(2, '11:00', 'U2', 'J1'),
      salvaged(3, '12:00', 'U1', 'J1', 'U2'),
      salvaged(4, '13:00', 'U2', 'J1', 'U3'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['U1 contains', 'U2 contains']);
  });

  it('goes on: a salvaged part can be salvaged again', () => {
    const events = [
      removed(2, '09:00', 'U1', 'J1'),
      salvaged(3, '10:00', 'U1', 'J1', 'U2'),
      removed(4, '11:00', 'U2', 'J1'),
      salvaged(5, '12:00', 'U2', 'J1', 'U3'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['U1 formerly', 'U2 formerly', 'U3 contains']);
  });

  it('reaches the outer units that hold the receiving unit after the installation', () => {
    const events = [
      joined(2, '08:30', 'U2', 'M1'),
      separated(3, '09:30', 'U2', 'M1'),
      salvaged(4, '10:00', 'U1', 'J1', 'U2'),
      joined(5, '11:00', 'U2', 'M2'),
    ];
    expect(answerOf(USED, ...events)).toEqual(['M2 contains U2', 'U1 contains', 'U2 contains']);
  });
});
