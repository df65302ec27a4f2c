import { type History, liveOf, type Recorded } from '@/tests/reference/model/history';
import { compareKeys, intersection, type Period } from '@/tests/reference/model/order';
import type { EventOf } from '@/tests/reference/model/wire-types';

/** One unit inside another, from `unit.joined` until the first later `unit.separated` of the same two. */
export type Join = {
  unit: string;
  into: string;
  period: Period;
  joined: Recorded<EventOf<'unit.joined'>>;
  separated: Recorded<EventOf<'unit.separated'>> | undefined;
};

/** Every join that ever was, in order. */
export function joinsOf(history: History): Join[] {
  return liveOf(history, 'unit.joined').map((joined) => {
    const { unit, into } = joined.event.body;
    const separated = liveOf(history, 'unit.separated').find(
      ({ event, key }) =>
        event.body.unit === unit && event.body.from === into && compareKeys(key, joined.key) > 0,
    );
    return { unit, into, joined, separated, period: { from: joined.key, to: separated?.key ?? null } };
  });
}

/** A way from the unit that drew out to `unit`; `open` when the whole chain still holds. */
export type OuterPath = { unit: string; through: string[]; open: boolean };

/** Every way outwards from a unit during the period in which it held the item, itself left out. */
export function pathsOutward(joins: readonly Join[], unit: string, held: Period): OuterPath[] {
  return pathsFrom(joins, unit, held, []);
}

function pathsFrom(joins: readonly Join[], unit: string, held: Period, inside: string[]): OuterPath[] {
  const through = [unit, ...inside];
  const paths: OuterPath[] = [];
  for (const join of joins) {
    if (join.unit !== unit || through.includes(join.into)) continue;
    const shared = intersection(join.period, held);
    if (shared === null) continue;
    paths.push({ unit: join.into, through, open: shared.to === null });
    paths.push(...pathsFrom(joins, join.into, shared, through));
  }
  return paths;
}

/** The unit that is now around all others around this one, or the unit itself; the latest join counts. */
export function outermostOf(joins: readonly Join[], unit: string): string {
  const visited = [unit];
  let outermost = unit;
  for (;;) {
    const next = lastOpenJoin(joins, outermost)?.into;
    if (next === undefined || visited.includes(next)) return outermost;
    visited.push(next);
    outermost = next;
  }
}

function lastOpenJoin(joins: readonly Join[], unit: string): Join | undefined {
  return joins.findLast((join) => join.unit === unit && join.period.to === null);
}
