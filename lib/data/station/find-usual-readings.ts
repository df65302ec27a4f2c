import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { readingSchema } from '@/lib/domain/events/unit-events';
import type { UsualReading } from '@/lib/domain/station/station-picture';

// "Lately" for what is usual at a station: enough to see every product of a shift.
const RESULTS_MAX = 100;
/** More than a person types for one unit are a machine's. */
const NAMES_MAX = 12;

const rowSchema = z.object({
  product: z.string(),
  revision: z.string(),
  readings: z.array(readingSchema),
});

/**
 * What was measured last of each product at a station, with unit and limits, in the order of that event. Direction:
 * event_at_station backwards over at most 100 results → unit by key.
 */
export async function findUsualReadings(db: Queryable, station: string): Promise<UsualReading[]> {
  const { rows } = await db.query(
    `select distinct on (u.product, u.revision) u.product, u.revision, e.body -> 'readings' as readings
     from (
       select e.id, e.at, e.unit, e.body from log.event e
       where e.type = 'unit.processed' and e.station = $1
       order by e.at desc limit ${RESULTS_MAX}
     ) e
     join read.unit u on u.unit = e.unit
     where jsonb_typeof(e.body -> 'readings') = 'array' and e.body -> 'readings' <> '[]'
       and u.product is not null and u.revision is not null
       and not exists (select from read.voided v where v.event = e.id)
     order by u.product, u.revision, e.at desc, e.id desc`,
    [station],
  );
  return rows.flatMap((row) => {
    const { product, revision, readings } = rowSchema.parse(row);
    const byName = new Map(readings.map((reading) => [reading.name, reading]));
    if (byName.size > NAMES_MAX) return [];
    return [...byName.values()].map(({ name, unit = null, low = null, high = null }) => ({
      product,
      revision,
      name,
      unit,
      low,
      high,
    }));
  });
}
