import { findReleases } from '@/lib/data/log/find-recorded-events';
import { findVoids } from '@/lib/data/log/find-voids';
import { type LoggedEvent, subjectUnit, toLogged } from '@/lib/domain/events/logged-event';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import { refusalSchema } from '@/lib/domain/gate/question';
import { compareKeys, instantOf, type OrderKey } from '@/lib/domain/time';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import { signOffOf } from '@/lib/domain/units/sign-off';
import type { UnitRecord } from '@/lib/domain/units/unit-record';
import { unitStanding } from '@/lib/domain/units/unit-standing';
import { asBuilt, type EventRecord } from '@/lib/server/as-built';
import { findContainerMoves } from '@/lib/server/container-history';
import { database } from '@/lib/server/database';
import { findLacks } from '@/lib/server/find-lacks';
import { heldInside } from '@/lib/server/held-inside';
import { readPlant } from '@/lib/server/read-plant';

/** Everything that a unit's page tells, now or as of a moment (RFC 3339); null when no event names the unit. */
export async function readUnitRecord(unit: string, at?: string): Promise<UnitRecord | null> {
  const built = await asBuilt(unit, at);
  if (built === null) return null;
  const { events, ...record } = built;
  const voids = await findVoids(
    database().pool,
    events.flatMap((event) => (event.voided ? [event.id] : [])),
  );
  const history = events.map(({ voided: _, voidedBy: __, recordedAt, recordedBy, flags, ...event }) => ({
    event,
    recordedAt,
    recordedBy,
    voidedBy: voids.get(event.id) ?? null,
    flags: flags.map((flag) => refusalSchema.parse(flag)),
  }));
  const untilUs = at === undefined ? Number.POSITIVE_INFINITY : instantOf(at);
  const releases = await findReleases(
    database().pool,
    record.holds.map(({ hold }) => hold),
  );
  const plant = await readPlant();
  const own = ownEvents(unit, events);
  const around = [...releases, ...(await findContainerMoves(own))].filter(
    ({ event }) => instantOf(event.at) <= untilUs,
  );
  const state = foldUnit(unit, own, plant);
  const lacks = await findLacks(database().pool, unit, { history: own, plant, stays: record.children });
  const held = at === undefined && !state.isScrapped ? await heldInside(unit) : [];
  return {
    ...record,
    standing: unitStanding(unit, state, plant),
    signOff: signOffOf(unit, own, plant),
    cautions: [...lacks, ...held],
    history: [...history, ...around].sort((a, b) => compareKeys(keyOf(a), keyOf(b))),
  };
}

function keyOf({ event }: RecordedEvent): OrderKey {
  return { atUs: instantOf(event.at), id: event.id };
}

/** The events of the unit itself that count, in order. */
function ownEvents(unit: string, events: readonly EventRecord[]): LoggedEvent[] {
  return events.flatMap(({ voided, voidedBy: _, recordedAt: __, recordedBy: ___, flags: ____, ...event }) =>
    voided || subjectUnit(event) !== unit ? [] : [toLogged(event)],
  );
}
