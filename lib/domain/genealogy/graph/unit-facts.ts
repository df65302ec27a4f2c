import type { EventOf } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { isMaterial } from '@/lib/domain/gate/material-rules';
import type { Place } from '@/lib/domain/genealogy/answer';
import type { UnitDraw } from '@/lib/domain/genealogy/unit-draws';
import { compareKeys, instantOf, type OrderKey } from '@/lib/domain/time';

/** A stay in or around another unit, as events tell it. */
type Stay = { unit: string; at: string; by: string; until: string | null; endedBy: string | null };

/** What the record tells of one unit: its as-built record, with the events that count and name it, in order. */
export type UnitFacts = {
  product: string | null;
  revision: string | null;
  place: Place;
  containers: readonly string[];
  draws: readonly UnitDraw[];
  children: readonly (Stay & { position: string })[];
  parents: readonly (Stay & { position: string })[];
  events: readonly LoggedEvent[];
};

/** A span of the order that counts, from `from` to before `to`. */
export type Window = { from: OrderKey; to: OrderKey };

const BEFORE_ALL: OrderKey = { atUs: Number.NEGATIVE_INFINITY, id: '' };
const AFTER_ALL: OrderKey = { atUs: Number.POSITIVE_INFINITY, id: '' };
export const ALWAYS: Window = { from: BEFORE_ALL, to: AFTER_ALL };

/** Whether a window lasts until now. */
export function isOpen({ to }: Window): boolean {
  return to.atUs === Number.POSITIVE_INFINITY;
}

/** What two windows share, or null when they do not touch. */
export function shared(a: Window, b: Window): Window | null {
  const from = compareKeys(a.from, b.from) > 0 ? a.from : b.from;
  const to = compareKeys(a.to, b.to) < 0 ? a.to : b.to;
  return compareKeys(from, to) < 0 ? { from, to } : null;
}

/** How long a stay lasted. */
export function windowOf(stay: Stay): Window {
  const to =
    stay.until === null || stay.endedBy === null
      ? AFTER_ALL
      : { atUs: instantOf(stay.until), id: stay.endedBy };
  return { from: { atUs: instantOf(stay.at), id: stay.by }, to };
}

/** How long a unit held what a draw brought: material until its last position was cleared, a tool's touch for good. */
export function heldDuring(facts: UnitFacts, unit: string, draw: UnitDraw): Window {
  const from = { atUs: instantOf(draw.at), id: draw.by };
  if (draw.kind !== null && !isMaterial(draw.kind)) return { from, to: AFTER_ALL };
  return { from, to: lastCleared(facts, { unit, positions: draw.positions, from }) };
}

/** When the last of some positions was cleared for the first time after a moment; open while one was not. */
export function lastCleared(
  facts: UnitFacts,
  held: { unit: string; positions: readonly string[]; from: OrderKey },
): OrderKey {
  const cleared = held.positions.map(
    (position) =>
      facts.events.find(
        (event) =>
          event.type === 'part.removed' &&
          event.body.unit === held.unit &&
          event.body.position === position &&
          compareKeys(event, held.from) > 0,
      ) ?? AFTER_ALL,
  );
  return cleared.reduce<OrderKey>(
    (last, each) => (compareKeys(each, last) > 0 ? each : last),
    cleared[0] ?? AFTER_ALL,
  );
}

/** A part that came out of another unit. */
export type Salvage = {
  event: LoggedEvent & EventOf<'part.installed'>;
  into: string;
  position: string;
  fromUnit: string;
  fromPosition: string;
};

/** The salvages that a record names, on either side, in order. */
export function salvagesIn(facts: UnitFacts): Salvage[] {
  return facts.events.flatMap((event) => {
    if (event.type !== 'part.installed') return [];
    const { unit, position, fromUnit, fromPosition } = event.body;
    if (fromUnit === undefined || fromPosition === undefined) return [];
    return [{ event, into: unit, position, fromUnit, fromPosition }];
  });
}

/** Up to when what supplied the donor's position came along: its last removal before the part went in elsewhere. */
export function cutOf(donor: UnitFacts, { event, fromUnit, fromPosition }: Salvage): OrderKey {
  const removal = donor.events.findLast(
    (each) =>
      each.type === 'part.removed' &&
      each.body.unit === fromUnit &&
      each.body.position === fromPosition &&
      compareKeys(each, event) < 0,
  );
  return removal ?? event;
}
