import { momentText } from '@/lib/data/moment/moment-tables';
import type { Queryable } from '@/lib/data/pool';
import type { Moment } from '@/lib/domain/genealogy/moment';

/** Refused events whose numbers do not count as arrived. */
export const NOT_ARRIVED = `('time_in_future', 'device_seq_reused')`;

/**
 * Which numbers of which devices had arrived by the moment, refused events included, whenever they happened; and which
 * devices were known to be lost. Cost: what arrived since.
 */
export async function rewindDevices(live: Queryable, moment: Moment): Promise<void> {
  const values = [moment.knownTo, momentText(moment.knownAtUs)];
  await live.query(
    `insert into pg_temp.device (device, received, last_seen_at)
     select d.device, x.received,
            case when d.last_seen_at <= $2::timestamptz then d.last_seen_at
                 else coalesce(greatest(
                   (select e.recorded_at from log.event e
                    where e.device = d.device and e.position <= $1 order by e.position desc limit 1),
                   (select max(f.refused_at) from log.refusal f
                    where f.device = d.device and f.refused_at <= $2::timestamptz and f.code not in ${NOT_ARRIVED})
                 ), 'epoch')
            end
     from read.device d
     left join (
       select late.device, range_agg(int8range(late.device_seq, late.device_seq, '[]')) as numbers
       from (
         select device, device_seq from log.event where device is not null and position > $1
         union
         select device, device_seq from log.refusal
         where device is not null and code not in ${NOT_ARRIVED} and refused_at > $2::timestamptz
       ) late
       where not exists (
           select from log.event e
           where e.device = late.device and e.device_seq = late.device_seq and e.position <= $1
         )
         and not exists (
           select from log.refusal f
           where f.device = late.device and f.device_seq = late.device_seq and f.code not in ${NOT_ARRIVED}
             and f.refused_at <= $2::timestamptz
         )
       group by late.device
     ) since on since.device = d.device
     cross join lateral (select d.received - coalesce(since.numbers, '{}') as received) x
     where not isempty(x.received)`,
    values,
  );
  await live.query(
    `insert into pg_temp.device_retirement
     select r.* from read.device_retirement r
     join log.event e on e.id = r.event and e.position <= $1
     on conflict do nothing`,
    [moment.knownTo],
  );
}
