import { findUnitHistory } from '@/lib/data/log/find-events';
import { findContainer } from '@/lib/data/packing/find-container';
import { hasContainerLike } from '@/lib/data/packing/has-container-like';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { assembleKnown } from '@/lib/data/record/assemble-known';
import { openRecordCache } from '@/lib/data/record/record-cache';
import { findItemPicture } from '@/lib/data/station/find-item-picture';
import { findUnitPlace } from '@/lib/data/station/find-unit-place';
import { findHolds } from '@/lib/data/trace/find-holds';
import { findJoinings } from '@/lib/data/trace/find-joinings';
import { onSnapshot } from '@/lib/data/transaction';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { judge } from '@/lib/domain/gate/judge';
import type { Plant } from '@/lib/domain/plant/plant';
import type { ScanPicture, UnitPicture } from '@/lib/domain/station/scan-picture';
import { readLabel } from '@/lib/domain/station/scanned-label';
import { isOnAnyRoute, serialOf, startableAs } from '@/lib/domain/station/startable';
import { unitPicture } from '@/lib/domain/station/unit-picture';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';
import { findLacks } from '@/lib/server/find-lacks';
import { heldInside } from '@/lib/server/held-inside';
import { readPlant } from '@/lib/server/read-plant';

/** What a scanned code names, for any screen with a scan box; `station` says where it was scanned. */
export async function readScan(code: string, station: string | undefined): Promise<ScanPicture> {
  const scan = await readCode(code, station);
  if (scan.unit === null || !(await isAsked(station))) return scan;
  const { unit } = scan;
  if (unit.isScrapped) return scan;
  return { ...scan, unit: { ...unit, cautions: [...unit.cautions, ...(await heldInside(code))] } };
}

/** Whether units may be signed off or packed where the code was scanned: only there is it looked into. */
async function isAsked(station: string | undefined): Promise<boolean> {
  if (station === undefined) return true;
  const plant = await readPlant();
  const operation = plant.station(station)?.operation;
  return operation !== undefined && !isOnAnyRoute(plant, operation);
}

function readCode(code: string, station: string | undefined): Promise<ScanPicture> {
  return onSnapshot(database().pool, async (db) => {
    const { plant } = await loadPlant(db);
    const [unit, container, item] = await Promise.all([
      readUnit(db, code, plant),
      findContainer(db, code),
      findItemPicture(db, code),
    ]);
    const isRecorded = unit !== null || container !== null || item !== null;
    return {
      code,
      unit,
      item,
      container: container === null ? null : { container: code, shipment: container.shipment },
      isContainerLike: !isRecorded && (await hasContainerLike(db, code)),
      label: isRecorded ? null : readLabel(plant, code),
      isPart: plant.namesPart(code),
      serialOf: serialOf(plant, code),
      startable: station === undefined || unit !== null ? [] : startableAs(plant, station, code),
    };
  });
}

async function readUnit(db: Queryable, unit: string, plant: Plant): Promise<UnitPicture | null> {
  const history = await findUnitHistory(db, unit);
  if (!history.some((event) => event.type === 'unit.started')) return null;
  const children = await findJoinings(db, { unit, side: 'outer_unit' });
  const parents = await findJoinings(db, { unit, side: 'inner_unit' });
  const holds = await findHolds(db, 'unit', unit);
  return unitPicture(unit, history, {
    plant,
    place: await findUnitPlace(db, unit),
    outer: parents.findLast((stay) => stay.until === null)?.outer ?? null,
    joined: children
      .filter((stay) => stay.until === null)
      .map(({ inner, position }) => ({ unit: inner, position })),
    holds: holds
      .filter((hold) => hold.releasedAt === null)
      .map(({ hold, reason, automatic, at }) => ({ hold, reason, automatic, at })),
    cautions: await findLacks(db, unit, { history, plant, stays: children }),
    signing: await judgeSigning(db, unit, plant),
  });
}

/** What the gate would say to a sign-off now. */
async function judgeSigning(db: Queryable, unit: string, plant: Plant): Promise<UnitPicture['signing']> {
  const atUs = Date.now() * 1000;
  const event: LoggedEvent = {
    // Ties go to the later id: a question comes after everything that happened at its moment.
    id: 'ffffffff-ffff-ffff-ffff-ffffffffffff',
    type: 'unit.signed',
    at: formatInstant(atUs),
    atUs,
    body: { unit, meaning: '-' },
  };
  const cache = openRecordCache(db);
  return judge(event, await assembleKnown({ db, cache, plant, event, mode: 'enforce' }));
}
