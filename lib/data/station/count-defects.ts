import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

// How far back "lately" reaches: a week or two of a busy station.
const RESULTS_MAX = 5000;

const rowSchema = z.object({ code: z.string(), count: z.number() });

/**
 * The defect codes that were given lately at a station, or anywhere when it is null, most used first. Direction:
 * event_at_station (or event_at) backwards over at most 5,000 results, of which the fails are opened; some milliseconds.
 */
export async function countDefects(
  db: Queryable,
  station: string | null,
  count: number,
): Promise<{ code: string; count: number }[]> {
  const { rows } = await db.query(
    `select d.value ->> 'code' as code, count(*)::integer as count
     from (
       select e.id, e.body from log.event e
       where e.type = 'unit.processed' ${station === null ? 'and $1::text is null' : 'and e.station = $1'}
       order by e.at desc limit ${RESULTS_MAX}
     ) e
     cross join lateral jsonb_array_elements(e.body -> 'defects') d
     where e.body ->> 'result' = 'fail' and jsonb_typeof(e.body -> 'defects') = 'array'
       and not exists (select from read.voided v where v.event = e.id)
     group by 1
     order by count(*) desc, (d.value ->> 'code') collate "C"
     limit $2`,
    [station, count],
  );
  return rows.map((row) => rowSchema.parse(row));
}
