import type { EventOf, WireEvent } from '@/lib/domain/events/catalogue';
import {
  containerOnHold,
  containerShipped,
  nestsItself,
  notReadyToShip,
  unknownContainer,
} from '@/lib/domain/gate/container-rules';
import type { Known } from '@/lib/domain/gate/known';
import {
  fittedPartFaults,
  itemOnHold,
  mountFaults,
  retired,
  slotFaults,
  unknownItem,
} from '@/lib/domain/gate/material-rules';
import { inPrecedence, type Refusal } from '@/lib/domain/gate/refusals';
import {
  failureElsewhere,
  notReadyToLeave,
  packedOrShipped,
  scrapped,
  unitOnHold,
  unknownUnit,
  wrongStep,
} from '@/lib/domain/gate/unit-rules';
import { matchesSerialPattern } from '@/lib/domain/plant/serial-pattern';

/**
 * Every rule that an event breaks, given what is known at its moment, in order of precedence; empty is go.
 * Pure: server and tablet run this same function.
 */
export function judge(event: WireEvent, known: Known): Refusal[] {
  return inPrecedence([...whoAndWhere(event, known), ...rulesOf(event, known)]);
}

function whoAndWhere({ station, operator }: WireEvent, known: Known): Refusal[] {
  const refusals: Refusal[] = [];
  if (station !== undefined && known.plant.station(station) === null)
    refusals.push({ code: 'unknown_station', station });
  if (operator !== undefined && known.plant.operator(operator) === null)
    refusals.push({ code: 'unknown_operator', operator });
  return refusals;
}

function rulesOf(event: WireEvent, known: Known): Refusal[] {
  switch (event.type) {
    case 'unit.started':
      return started(event, known);
    case 'unit.processed':
      return processed(event, known);
    case 'unit.signed':
      return workOn(known, event.body.unit, [
        ...unitOnHold(known, event.body.unit),
        ...failureElsewhere(known, event.body.unit, null),
      ]);
    case 'unit.joined':
      return joined(event, known);
    case 'unit.separated':
      return separated(event, known);
    case 'part.removed':
      return workOn(known, event.body.unit, packedOrShipped(known, event.body.unit));
    case 'part.installed':
      return installed(event, known);
    case 'unit.scrapped':
      return workOn(known, event.body.unit, []);
    case 'unit.packed':
      return packed(event, known);
    case 'unit.unpacked':
      return unpacked(event, known);
    case 'container.nested':
      return nested(event, known);
    case 'container.unnested':
      return unnested(event, known);
    case 'container.shipped':
      return ifKnown(unknownContainer(known, event.body.container), () => [
        ...containerShipped(known, event.body.container),
        ...notReadyToShip(known, event.body.container),
      ]);
    case 'unit.returned':
      return unknownUnit(known, event.body.unit);
    case 'hold.placed':
      return unknownTarget(event, known);
    case 'hold.released':
      return released(event, known);
    case 'exception.cleared':
      return cleared(event, known);
    case 'item.received':
      return known.item(event.body.item) === null
        ? []
        : [{ code: 'already_received', item: event.body.item }];
    case 'item.counted':
    case 'item.inspected':
    case 'item.retired':
      return unknownItem(known, event.body.item);
    case 'item.mounted':
      return mountFaults(known, { ...event.body, station: event.station });
    case 'item.unmounted':
      return unmounted(event, known);
    case 'item.spliced':
      return spliced(event, known);
    case 'device.retired':
      // Any device: what the lost one has sent may still be on its way.
      return [];
    case 'label.printed':
      return reprinted(event, known);
    case 'event.voided':
      return namesVoid(event, known) ? [{ code: 'void_of_void', event: event.body.event }] : [];
    default:
      return event satisfies never;
  }
}

function namesVoid({ id, body }: EventOf<'event.voided'>, known: Known): boolean {
  return body.event === id || known.eventType(body.event) === 'event.voided';
}

/** What is unknown cannot be asked further questions. */
function ifKnown(unknown: Refusal[], further: () => Refusal[]): Refusal[] {
  return unknown.length > 0 ? unknown : further();
}

function workOn(known: Known, unit: string, further: Refusal[]): Refusal[] {
  return ifKnown(unknownUnit(known, unit), () => [...scrapped(known, unit), ...further]);
}

function started({ body }: EventOf<'unit.started'>, known: Known): Refusal[] {
  const refusals: Refusal[] = [];
  const product = known.plant.product(body.product, body.revision);
  if (product === null)
    refusals.push({ code: 'unknown_product', product: body.product, revision: body.revision });
  const pattern = product?.serialPattern;
  if (pattern !== undefined && !matchesSerialPattern(pattern, body.unit))
    refusals.push({ code: 'serial_pattern_mismatch', unit: body.unit, expected: pattern });
  if (known.isStartedEver(body.unit)) refusals.push({ code: 'already_started', unit: body.unit });
  if (body.boardLot !== undefined) {
    const onLot = known.holdsOn('lot', body.boardLot);
    refusals.push(...itemOnHold(known, body.boardLot));
    refusals.push(
      ...onLot.map(({ hold, kind, id, reason }): Refusal => ({ code: 'on_hold', kind, id, hold, reason })),
    );
  }
  return refusals;
}

function processed(event: EventOf<'unit.processed'>, known: Known): Refusal[] {
  const { station: code, operator: badge, body } = event;
  const station = known.plant.station(code);
  const operator = badge === undefined ? null : known.plant.operator(badge);
  const unit = ifKnown(unknownUnit(known, body.unit), () => [
    ...scrapped(known, body.unit),
    ...packedOrShipped(known, body.unit),
    ...unitOnHold(known, body.unit),
    ...(station === null ? [] : failureElsewhere(known, body.unit, station.operation)),
    ...(station === null ? [] : wrongStep(known, body.unit, station.operation)),
    ...slotFaults(known, body.unit, code),
  ]);
  const used = (body.used ?? []).flatMap(({ item }) => [
    ...unknownItem(known, item),
    ...retired(known, item),
    ...itemOnHold(known, item),
  ]);
  const isQualified =
    operator === null || station === null || (operator.operations ?? []).includes(station.operation);
  if (isQualified) return [...unit, ...used];
  return [...unit, ...used, { code: 'not_qualified', operator: badge, operation: station.operation }];
}

function joined({ body: { unit, into } }: EventOf<'unit.joined'>, known: Known): Refusal[] {
  return ifKnown([...unknownUnit(known, unit), ...unknownUnit(known, into)], () => {
    const refusals = [unit, into].flatMap((each) => [
      ...scrapped(known, each),
      ...packedOrShipped(known, each),
      ...unitOnHold(known, each),
    ]);
    refusals.push(...failureElsewhere(known, unit, null));
    const outer = known.outerUnit(unit);
    if (outer !== null) refusals.push({ code: 'already_inside', unit, outer });
    if (unit === into || known.innerUnits(unit).includes(into))
      refusals.push({ code: 'would_contain_itself', unit, into });
    return refusals;
  });
}

function separated({ body: { unit, from } }: EventOf<'unit.separated'>, known: Known): Refusal[] {
  return ifKnown([...unknownUnit(known, unit), ...unknownUnit(known, from)], () => [
    ...packedOrShipped(known, from),
    ...(known.outerUnit(unit) === from ? [] : [{ code: 'not_inside' as const, unit, from }]),
  ]);
}

/**
 * The contract lets a part go to any position, and refuses none for its part number: the tablet stops a wrong one before
 * it is fitted. One that is told as a fact is on the unit, and somebody must decide about it: it is flagged.
 */
function installed({ gate, body }: EventOf<'part.installed'>, known: Known): Refusal[] {
  const { unit, position, item } = body;
  const wrong =
    gate === 'record' && item !== undefined ? fittedPartFaults(known, { unit, position, item }) : [];
  const source =
    item === undefined
      ? body.fromUnit === undefined
        ? []
        : unknownUnit(known, body.fromUnit)
      : [...unknownItem(known, item), ...retired(known, item), ...itemOnHold(known, item)];
  return [...source, ...workOn(known, unit, [...packedOrShipped(known, unit), ...wrong])];
}

function packed({ body: { unit, container } }: EventOf<'unit.packed'>, known: Known): Refusal[] {
  const outer = known.outerUnit(unit);
  return ifKnown(unknownUnit(known, unit), () => [
    ...packedOrShipped(known, unit),
    ...(outer === null ? [] : [{ code: 'inside_another_unit' as const, unit, outer }]),
    ...containerShipped(known, container),
    ...containerOnHold(known, container),
    ...notReadyToLeave(known, unit),
  ]);
}

function unpacked({ body: { unit, container } }: EventOf<'unit.unpacked'>, known: Known): Refusal[] {
  return ifKnown([...unknownUnit(known, unit), ...unknownContainer(known, container)], () => {
    const state = known.unit(unit);
    const isIn = state?.placing === 'container' && state.container === container;
    return isIn ? containerShipped(known, container) : [{ code: 'not_in_container', unit, container }];
  });
}

function nested({ body: { container, into } }: EventOf<'container.nested'>, known: Known): Refusal[] {
  return ifKnown(unknownContainer(known, container), () => [
    ...containerShipped(known, container),
    ...containerShipped(known, into),
    ...containerOnHold(known, container),
    ...containerOnHold(known, into),
    ...nestsItself(known, container, into),
  ]);
}

function unnested({ body: { container, from } }: EventOf<'container.unnested'>, known: Known): Refusal[] {
  return ifKnown([...unknownContainer(known, container), ...unknownContainer(known, from)], () =>
    known.container(container)?.inside === from
      ? containerShipped(known, container)
      : [{ code: 'not_in_container', container, from }],
  );
}

function unknownTarget({ body: { target } }: EventOf<'hold.placed'>, known: Known): Refusal[] {
  switch (target.kind) {
    case 'unit':
      return unknownUnit(known, target.id);
    case 'item':
      return unknownItem(known, target.id);
    case 'container':
      return unknownContainer(known, target.id);
    case 'lot':
      return [];
    default:
      return target.kind satisfies never;
  }
}

function released({ body: { hold } }: EventOf<'hold.released'>, known: Known): Refusal[] {
  const state = known.hold(hold);
  if (state === null) return [{ code: 'unknown_hold', hold }];
  return state.isReleased ? [{ code: 'hold_already_released', hold }] : [];
}

function cleared({ body: { event } }: EventOf<'exception.cleared'>, known: Known): Refusal[] {
  const state = known.exception(event);
  if (state === null) return [{ code: 'unknown_exception', event }];
  return state.isCleared ? [{ code: 'exception_already_cleared', event }] : [];
}

function spliced({ station, body: { from, to, slot } }: EventOf<'item.spliced'>, known: Known): Refusal[] {
  const refusals: Refusal[] = from === to ? [{ code: 'splices_itself', item: to }] : [];
  refusals.push(...mountFaults(known, { item: to, station, slot }));
  const isIn = known.slotContents(station).get(slot) === from;
  if (known.item(from) === null) refusals.push({ code: 'unknown_item', item: from });
  else if (!isIn && known.plant.slotHolds(station, slot) !== null)
    refusals.push({ code: 'not_in_slot', station, slot, item: from });
  return refusals;
}

function unmounted({ station, body: { item, slot } }: EventOf<'item.unmounted'>, known: Known): Refusal[] {
  return ifKnown(unknownItem(known, item), () => {
    if (known.plant.station(station) === null) return [];
    const isIn = known.slotContents(station).get(slot) === item;
    if (isIn) return [];
    if (known.plant.slotHolds(station, slot) === null) return [{ code: 'unknown_slot', station, slot }];
    return [{ code: 'not_in_slot', station, slot, item }];
  });
}

/** Two labels with one code can end up on two things: a reprint says why it was needed. */
function reprinted({ body: { target, reason } }: EventOf<'label.printed'>, known: Known): Refusal[] {
  if (reason !== undefined || !known.isLabelled(target.kind, target.id)) return [];
  return [{ code: 'reprint_without_reason', kind: target.kind, id: target.id }];
}
