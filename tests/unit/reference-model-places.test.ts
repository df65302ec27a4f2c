import { describe, expect, it } from 'vitest';
import {
  HAND_PLANT,
  joined,
  modelOf,
  passed,
  separated,
  stamped,
  started,
} from '@/tests/reference/model/hand-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import type { WireEvent } from '@/tests/reference/model/wire-types';

const PRINT = { station: 'PRINT' };
const IN_CT = { kind: 'container', container: 'CT-1' };
const SHIPPED = { kind: 'shipped', container: 'CT-1', shipment: 'SH-7', customer: 'Northgate Rail' };

function placeAfter(...events: readonly WireEvent[]) {
  return modelOf(events).asBuilt('U1').place;
}

function failed(order: number, time: string, station: string): WireEvent {
  const envelope = stamped(order, time, { station });
  return { ...envelope, type: 'unit.processed', body: { unit: 'U1', result: 'fail' } };
}

function packed(order: number, time: string): WireEvent {
  return { ...stamped(order, time), type: 'unit.packed', body: { unit: 'U1', container: 'CT-1' } };
}

function nested(order: number, time: string, container: string, into: string): WireEvent {
  return { ...stamped(order, time), type: 'container.nested', body: { container, into } };
}

function unnested(order: number, time: string, container: string, from: string): WireEvent {
  return { ...stamped(order, time), type: 'container.unnested', body: { container, from } };
}

function shipped(order: number, time: string, container: string, shipment = 'SH-7'): WireEvent {
  const body = { container, shipment, customer: 'Northgate Rail', destination: 'Yard' };
  return { ...stamped(order, time), type: 'container.shipped', body };
}

describe('Place: "unit.started, unit.processed → station (null before the first)"', () => {
  it('no placing event places nothing', () => {
    expect(placeAfter()).toBeNull();
  });

  it('started, then at the station of the last pass', () => {
    const begun = started(1, '07:00', 'U1');
    expect(placeAfter(begun)).toEqual({ kind: 'station', station: null });
    expect(placeAfter(begun, passed(2, '08:00', 'U1', PRINT))).toEqual({ kind: 'station', station: 'PRINT' });
  });

  it('"or stock once every step that is owed has passed last"', () => {
    const done = [
      started(1, '07:00', 'U1'),
      passed(2, '08:00', 'U1', PRINT),
      failed(3, '09:00', 'PLACE'),
      passed(4, '10:00', 'U1'),
    ];
    expect(placeAfter(...done)).toEqual({ kind: 'stock' });
    expect(placeAfter(...done, failed(5, '11:00', 'PRINT'))).toEqual({ kind: 'station', station: 'PRINT' });
  });

  it('"A route step with sample is owed only by units picked for it", or that have results there', () => {
    const done = [started(1, '07:00', 'U1'), passed(2, '08:00', 'U1', PRINT), passed(3, '09:00', 'U1')];
    const model = new ReferenceModel(HAND_PLANT, {
      picked: (unit, ...rest) => `${unit} ${rest}` === 'U1 WX4,C,60',
    });
    for (const event of done) model.record(event);
    expect(model.asBuilt('U1').place).toEqual({ kind: 'station', station: 'PLACE' });
    expect(placeAfter(...done, failed(4, '10:00', 'XRAY'))).toEqual({ kind: 'station', station: 'XRAY' });
    expect(placeAfter(...done, passed(4, '10:00', 'U1', { station: 'XRAY' }))).toEqual({ kind: 'stock' });
  });
});

describe('Place: containers', () => {
  it('"unit.packed → container", "unit.unpacked → stock"', () => {
    expect(placeAfter(packed(1, '08:00'))).toEqual(IN_CT);
    const unpacked: WireEvent = {
      ...packed(2, '09:00'),
      type: 'unit.unpacked',
      body: { unit: 'U1', container: 'CT-1' },
    };
    expect(placeAfter(packed(1, '08:00'), unpacked)).toEqual({ kind: 'stock' });
  });

  it('"shipped once that container or one around it is shipped"', () => {
    expect(placeAfter(packed(1, '08:00'), shipped(2, '09:00', 'CT-1'))).toEqual(SHIPPED);
    const around = [nested(2, '08:30', 'CT-1', 'PL-1'), nested(3, '08:40', 'PL-1', 'TR-1')];
    expect(placeAfter(packed(1, '08:00'), ...around, shipped(4, '09:00', 'TR-1'))).toEqual(SHIPPED);
  });

  it('of several shipments the nearest container counts, and its last', () => {
    const events = [
      packed(1, '08:00'),
      nested(2, '08:30', 'CT-1', 'PL-1'),
      shipped(3, '12:00', 'PL-1', 'SH-9'),
      shipped(4, '09:00', 'CT-1', 'SH-1'),
      shipped(5, '10:00', 'CT-1', 'SH-7'),
    ];
    expect(placeAfter(...events)).toEqual(SHIPPED);
  });

  it('a container is in the one that it was last nested into, until it is unnested from that one', () => {
    const events = [
      packed(1, '08:00'),
      nested(2, '08:30', 'CT-1', 'PL-1'),
      unnested(3, '08:40', 'CT-1', 'PL-2'),
      shipped(4, '09:00', 'PL-1'),
    ];
    expect(placeAfter(...events)).toEqual(SHIPPED);
    expect(placeAfter(...events, unnested(5, '08:50', 'CT-1', 'PL-1'))).toEqual(IN_CT);
    expect(placeAfter(...events, nested(5, '08:50', 'CT-1', 'PL-2'))).toEqual(IN_CT);
  });

  it('containers nested in a ring end', () => {
    const ring = [nested(2, '08:30', 'CT-1', 'PL-1'), nested(3, '08:30', 'PL-1', 'CT-1')];
    expect(placeAfter(packed(1, '08:00'), ...ring)).toEqual(IN_CT);
    expect(modelOf([packed(1, '08:00'), ...ring]).asBuilt('U1').containers).toEqual(['CT-1', 'PL-1']);
  });
});

describe('Place: ends of a life, and inner units', () => {
  const returned: WireEvent = { ...stamped(3, '10:00'), type: 'unit.returned', body: { unit: 'U1' } };
  const scrapped: WireEvent = {
    ...stamped(4, '08:30'),
    type: 'unit.scrapped',
    body: { unit: 'U1', reason: 'burnt' },
  };

  it('"by the unit\'s last placing event … unit.returned → returned"', () => {
    expect(placeAfter(returned, packed(1, '08:00'), shipped(2, '11:00', 'CT-1'))).toEqual({
      kind: 'returned',
    });
    expect(placeAfter(returned, packed(1, '12:00'))).toEqual(IN_CT);
  });

  it('"unit.scrapped → scrapped, for good"', () => {
    expect(placeAfter(scrapped, packed(1, '12:00'))).toEqual({ kind: 'scrapped' });
  });

  it('"an inner unit has the place of its outermost unit", of the latest open join', () => {
    const outer: WireEvent = {
      ...packed(5, '09:00'),
      body: { unit: 'X1', container: 'CT-1' },
      type: 'unit.packed',
    };
    const joins = [joined(6, '07:00', 'U1', 'M1'), joined(7, '07:30', 'M1', 'X1')];
    expect(placeAfter(started(1, '06:30', 'U1'), ...joins, outer)).toEqual(IN_CT);
    expect(placeAfter(scrapped, ...joins, outer)).toEqual(IN_CT);
    expect(placeAfter(...joins, outer, joined(8, '07:10', 'U1', 'M2'))).toBeNull();
    expect(placeAfter(returned, ...joins, outer, separated(8, '07:40', 'U1', 'M1'))).toEqual({
      kind: 'returned',
    });
  });

  it('counts by place what the filters leave', () => {
    const events = [
      started(1, '07:00', 'U1', { boardLot: 'BL7' }),
      started(5, '07:00', 'U2', { boardLot: 'BL7' }),
      packed(6, '08:00'),
    ];
    const { counts } = modelOf(events).whereUsed({ lot: 'BL7', place: ['container', 'shipped'] });
    const byPlace = { station: 0, stock: 0, container: 1, shipped: 0, returned: 0, scrapped: 0 };
    expect(counts).toEqual({
      units: 1,
      certain: 1,
      possible: 0,
      contains: 1,
      formerly: 0,
      touched: 0,
      byPlace,
    });
  });
});
