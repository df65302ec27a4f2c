import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { momentText } from '@/lib/data/moment/moment-tables';
import { BREADTH_MAX } from '@/lib/domain/genealogy/breadth';
import { formatInstant } from '@/lib/domain/time';

/** A time at a station, in microseconds: who passed in [lowUs, highUs) is wanted. */
export type StationTime = { station: string; lowUs: number; highUs: number };

const timeSchema = z.object({ station: z.string(), low: z.number(), high: openInstantColumn });
const unitSchema = z.object({ unit: z.string() });

/**
 * When items may have stood in slots, or their ends have been used up after a splice, at this moment or at any later
 * one: from each change that ever brought them to the first one after it that was known then and still counts. The
 * grey zone of a splice is ended by nothing but a mount.
 */
export async function findTimesOf(record: MomentRecord, items: readonly string[]): Promise<StationTime[]> {
  const { knownTo, untilUs } = record.moment;
  const { rows } = await record.live.query(
    `with change as (
       select m.event, m.station, m.slot, m.from_at, m.from_low, m.is_spliced from read.mount m where m.item = any($1)
       union
       select m.event, m.station, m.slot, m.from_at, m.from_low, m.is_spliced
       from read.splice g join read.mount m on m.event = g.event where g.item = any($1)
       union
       select id, station, (body ->> 'slot') collate "C", at, at - make_interval(secs => uncertainty_ms / 1000.0),
              type = 'item.spliced'
       from pg_temp.undone
       where type in ('item.mounted', 'item.spliced')
         and (body ->> 'item' = any($1) or body ->> 'from' = any($1) or body ->> 'to' = any($1))
     )
     select c.station, c.from_low as low,
            coalesce((
              select x.from_high from read.mount x
              where x.station = c.station and x.slot = c.slot and (x.from_at, x.event) > (c.from_at, c.event)
                and not (c.is_spliced and x.is_spliced) and x.from_at <= $3::timestamptz
                and exists (select from log.event e where e.id = x.event and e.position <= $2)
              order by x.from_at, x.event limit 1
            ), 'infinity') as high
     from change c`,
    [items, knownTo, momentText(untilUs)],
  );
  return rows.map((row) => {
    const { station, low: lowUs, high: highUs } = timeSchema.parse(row);
    return { station, lowUs, highUs };
  });
}

/** Admits the passes in some times; one that was voided meanwhile is there already. */
export async function admitPasses(record: MomentRecord, times: readonly StationTime[]): Promise<void> {
  await record.live.query(
    `insert into pg_temp.pass
     select p.* ${passesIn('read.pass')} join pg_temp.moment_event e on e.id = p.event
     on conflict do nothing`,
    [toRows(times)],
  );
}

/** Units that passed in some times: by what was admitted, or by the record as it is. */
export async function findPassing(
  record: MomentRecord,
  times: readonly StationTime[],
  { known }: { known: 'then' | 'now' },
): Promise<string[]> {
  const { rows } = await record.live.query(
    `select distinct p.unit ${passesIn(known === 'then' ? 'pg_temp.pass' : 'read.pass')}`,
    [toRows(times)],
  );
  return rows.map((row) => unitSchema.parse(row).unit);
}

function passesIn(table: string): string {
  return `
    from jsonb_to_recordset($1::jsonb) as w(station text, low timestamptz, high timestamptz)
    cross join generate_series(0, ${BREADTH_MAX}) as k(breadth)
    cross join lateral (
      select p.* from ${table} p
      where p.station = w.station collate "C" and p.breadth = k.breadth
        and p.high >= w.low and p.high < w.high + read.breadth_span(k.breadth) and p.low < w.high
      offset 0
    ) p`;
}

/** The times as rows, those of a station that overlap as one: many slots are filled over the same hours. */
function toRows(times: readonly StationTime[]): string {
  const merged: StationTime[] = [];
  const ordered = [...times].sort(
    (a, b) => (a.station < b.station ? -1 : a.station > b.station ? 1 : 0) || a.lowUs - b.lowUs,
  );
  for (const time of ordered) {
    const last = merged.at(-1);
    if (last?.station === time.station && time.lowUs <= last.highUs)
      last.highUs = Math.max(last.highUs, time.highUs);
    else merged.push({ ...time });
  }
  return JSON.stringify(
    merged.map(({ station, lowUs, highUs }) => ({
      station,
      low: formatInstant(lowUs),
      high: momentText(highUs),
    })),
  );
}
