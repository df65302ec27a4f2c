import type { z } from 'zod';
import { findUnitHistory } from '@/lib/data/log/find-events';
import { findContainer } from '@/lib/data/packing/find-container';
import { hasContainerLike } from '@/lib/data/packing/has-container-like';
import { assembleKnown } from '@/lib/data/record/assemble-known';
import { findItemPicture } from '@/lib/data/station/find-item-picture';
import { findUnitPlace } from '@/lib/data/station/find-unit-place';
import { findHolds } from '@/lib/data/trace/find-holds';
import { findJoinings } from '@/lib/data/trace/find-joinings';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { judge } from '@/lib/domain/gate/judge';
import type { judgedScanSchema, ScanPicture, UnitPicture } from '@/lib/domain/station/scan-picture';
import { readLabel } from '@/lib/domain/station/scanned-label';
import { isOnAnyRoute, serialOf, startableAs } from '@/lib/domain/station/startable';
import { unitPicture } from '@/lib/domain/station/unit-picture';
import { formatInstant } from '@/lib/domain/time';
import { judgeUnit } from '@/lib/server/check-unit';
import { findLacks } from '@/lib/server/find-lacks';
import { heldInside } from '@/lib/server/held-inside';
import { readPlant } from '@/lib/server/read-plant';
import { type RecordRead, readingRecord } from '@/lib/server/reading-record';

/** What a scanned code names, for any screen with a scan box; `station` says where it was scanned. */
export async function readScan(code: string, station: string | undefined): Promise<ScanPicture> {
  return withHeldInside(await readingRecord((record) => readCode(record, code, station)), station);
}

/** The same with what the gate says of a pass there and now, both on one snapshot. */
export async function readJudgedScan({
  code,
  station,
  operator,
}: {
  code: string;
  station: string;
  operator: string;
}): Promise<z.infer<typeof judgedScanSchema>> {
  const [scan, verdict] = await readingRecord((record) =>
    Promise.all([readCode(record, code, station), judgeUnit(record, { unit: code, station, operator })]),
  );
  return { ...(await withHeldInside(scan, station)), verdict };
}

async function withHeldInside(scan: ScanPicture, station: string | undefined): Promise<ScanPicture> {
  if (scan.unit === null || !(await isAsked(station))) return scan;
  const { unit } = scan;
  if (unit.isScrapped) return scan;
  return { ...scan, unit: { ...unit, cautions: [...unit.cautions, ...(await heldInside(scan.code))] } };
}

/** Whether units may be signed off or packed where the code was scanned: only there is it looked into. */
async function isAsked(station: string | undefined): Promise<boolean> {
  if (station === undefined) return true;
  const plant = await readPlant();
  const operation = plant.station(station)?.operation;
  return operation !== undefined && !isOnAnyRoute(plant, operation);
}

async function readCode(record: RecordRead, code: string, station: string | undefined): Promise<ScanPicture> {
  const { db, plant } = record;
  const [unit, container, item] = await Promise.all([
    readUnit(record, code),
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
}

async function readUnit(record: RecordRead, unit: string): Promise<UnitPicture | null> {
  const { db, plant } = record;
  // They travel together: each on its own would cost a scan another journey.
  const [history, children, parents, holds, place, signing] = await Promise.all([
    findUnitHistory(db, unit),
    findJoinings(db, { unit, side: 'outer_unit' }),
    findJoinings(db, { unit, side: 'inner_unit' }),
    findHolds(db, 'unit', unit),
    findUnitPlace(db, unit),
    judgeSigning(record, unit),
  ]);
  if (!history.some((event) => event.type === 'unit.started')) return null;
  return unitPicture(unit, history, {
    plant,
    place,
    outer: parents.findLast((stay) => stay.until === null)?.outer ?? null,
    joined: children
      .filter((stay) => stay.until === null)
      .map(({ inner, position }) => ({ unit: inner, position })),
    holds: holds
      .filter((hold) => hold.releasedAt === null)
      .map(({ hold, reason, automatic, at }) => ({ hold, reason, automatic, at })),
    cautions: await findLacks(db, unit, { history, plant, stays: children }),
    signing,
  });
}

/** What the gate would say to a sign-off now. */
async function judgeSigning(record: RecordRead, unit: string): Promise<UnitPicture['signing']> {
  const atUs = Date.now() * 1000;
  const event: LoggedEvent = {
    // Ties go to the later id: a question comes after everything that happened at its moment.
    id: 'ffffffff-ffff-ffff-ffff-ffffffffffff',
    type: 'unit.signed',
    at: formatInstant(atUs),
    atUs,
    body: { unit, meaning: '-' },
  };
  return judge(event, await assembleKnown({ ...record, event, mode: 'enforce' }));
}
