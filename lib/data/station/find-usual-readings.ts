import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { readingSchema } from '@/lib/domain/events/unit-events';
import type { UsualReading } from '@/lib/domain/station/station-picture';

// "Lately" for what is usual at a station: enough to see every product of a shift.
const RESULTS_MAX = 100;
/** One that was left out once is still asked for; one that was typed once by mistake is soon forgotten. */
const RESULTS_EACH = 5;
/** More than a person types for one unit are a machine's. */
const NAMES_MAX = 12;

const rowSchema = z.object({
  product: z.string(),
  revision: z.string(),
  readings: z.array(readingSchema),
});

/**
 * What was measured of each product at a station in its last results with readings, with the unit and limits of the
 * last one; in the order of the events. Direction: event_at_station backwards over at most 100 results → unit by key.
 */
export async function findUsualReadings(db: Queryable, station: string): Promise<UsualReading[]> {
  const { rows } = await db.query(
    `select product, revision, readings
     from (
       select u.product, u.revision, e.body -> 'readings' as readings, e.at, e.id,
         row_number() over (partition by u.product, u.revision order by e.at desc, e.id desc) as number
       from (
         select e.id, e.at, e.unit, e.body from log.event e
         where e.type = 'unit.processed' and e.station = $1
         order by e.at desc limit ${RESULTS_MAX}
       ) e
       join read.unit u on u.unit = e.unit
       where jsonb_typeof(e.body -> 'readings') = 'array' and e.body -> 'readings' <> '[]'
         and u.product is not null and u.revision is not null
         and not exists (select from read.voided v where v.event = e.id)
     ) lately
     where number <= ${RESULTS_EACH}
     order by product, revision, at desc, id desc`,
    [station],
  );
  const usual = new Map<string, Map<string, UsualReading>>();
  for (const row of rows) {
    const { product, revision, readings } = rowSchema.parse(row);
    const key = JSON.stringify([product, revision]);
    const byName = usual.get(key) ?? new Map<string, UsualReading>();
    usual.set(key, byName);
    for (const { name, unit = null, low = null, high = null } of readings)
      if (!byName.has(name)) byName.set(name, { product, revision, name, unit, low, high });
  }
  return [...usual.values()].flatMap((byName) => (byName.size > NAMES_MAX ? [] : [...byName.values()]));
}
