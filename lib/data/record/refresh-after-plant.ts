import { z } from 'zod';
import { findEventsById } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { judgeRecorded } from '@/lib/data/record/judge-recorded';
import { openRecordCache } from '@/lib/data/record/record-cache';
import { refreshUnit } from '@/lib/data/record/refresh-touched';
import type { Plant } from '@/lib/domain/plant/plant';

const unitRow = z.object({ unit: z.string() });
const eventRow = z.object({ event: z.string() });

/**
 * Makes again what rests on the plant: the progress of units whose route changed, or that were at a station whose
 * operation changed, and the flags of events recorded against a rule. A long job only when a route changes.
 */
export async function refreshAfterPlant(db: Queryable, before: Plant, after: Plant): Promise<void> {
  for (const unit of await unitsToFold(db, before, after)) await refreshUnit(db, unit, after);
  const flagged = await db.query('select event from read.flagged');
  if (flagged.rows.length === 0) return;
  const events = await findEventsById(
    db,
    flagged.rows.map((row) => eventRow.parse(row).event),
  );
  await judgeRecorded({ db, cache: openRecordCache(db), plant: after }, events, []);
}

async function unitsToFold(db: Queryable, before: Plant, after: Plant): Promise<Set<string>> {
  const changedProducts = (after.file.products ?? []).filter((product) => {
    const old = before.product(product.number, product.revision);
    return JSON.stringify(old?.route) !== JSON.stringify(product.route);
  });
  const changedStations = (after.file.stations ?? []).filter(
    ({ code, operation }) => before.station(code)?.operation !== operation,
  );
  const { rows } = await db.query(
    `select u.unit from read.unit u
     join unnest($1::text[], $2::text[]) as p(product, revision) using (product, revision)
     union
     select distinct e.unit from log.event e
     join read.unit u on u.unit = e.unit
     where e.type = 'unit.processed' and e.station = any($3)`,
    [
      changedProducts.map((product) => product.number),
      changedProducts.map((product) => product.revision),
      changedStations.map((station) => station.code),
    ],
  );
  return new Set(rows.map((row) => unitRow.parse(row).unit));
}
