import type { Queryable } from '@/lib/data/pool';

/** Reason of a hold that a failing result placed by using up the attempts of its step. */
export const ATTEMPTS_REASON = 'attempts_exhausted';

/**
 * Makes holds again from the events that bear their ids: a `hold.placed`, an event recorded against a rule, or a
 * failing result that used up the attempts of its step. Without any of these, or voided, there is no hold. The first
 * release in order ends it, and so does the clearing of the exception, unless attempts were used up as well. Each
 * look-up is by a key.
 */
export async function refreshHolds(db: Queryable, holds: readonly string[]): Promise<void> {
  if (holds.length === 0) return;
  await db.query('delete from read.hold where hold = any($1::uuid[])', [holds]);
  await db.query(
    `insert into read.hold (hold, target_kind, target, reason, is_automatic, placed_at, released_at, released_by,
       disposition)
     select e.id,
       case when e.type = 'hold.placed' then e.body -> 'target' ->> 'kind' else 'unit' end,
       case when e.type = 'hold.placed' then e.body -> 'target' ->> 'id' else e.unit end,
       case when e.type = 'hold.placed' then e.body ->> 'reason' else why.reasons end,
       e.type <> 'hold.placed', e.at, coalesce(r.at, 'infinity'), r.id, r.disposition
     from unnest($1::uuid[]) as h(id)
     join log.event e on e.id = h.id
     cross join lateral (
       select string_agg(x.code, ', ' order by x.first) as reasons, bool_or(x.code = '${ATTEMPTS_REASON}') as is_exhausted
       from (
         select flag ->> 'code' as code, min(ordinal) as first
         from read.flagged f
         cross join lateral jsonb_array_elements(f.flags) with ordinality as flags(flag, ordinal)
         where f.event = e.id
         group by flag ->> 'code'
         union all
         select '${ATTEMPTS_REASON}', 1000000
         from read.unit u where u.unit = e.unit and u.state -> 'exhausted' ? e.id::text
       ) x
     ) why
     left join lateral (
       select ending.* from (
         select r.at, r.id, r.body ->> 'disposition' as disposition from log.event r
         where r.type = 'hold.released' and r.body ->> 'hold' = e.id::text
           and not exists (select from read.voided v where v.event = r.id)
         union all
         select c.at, c.clearing, null from read.clearing_of(e.id) c where not why.is_exhausted
       ) ending
       order by ending.at, ending.id limit 1
     ) r on true
     where not exists (select from read.voided v where v.event = e.id)
       and (e.type = 'hold.placed' or (e.unit is not null and why.reasons is not null))`,
    [[...new Set(holds)]],
  );
}
