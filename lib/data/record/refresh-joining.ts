import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

/** Sets when the units' stays in others ended: each at the first separation from that one after the joining. */
async function endJoinings(db: Queryable, inner: readonly string[]): Promise<void> {
  await db.query(
    `update read.joining j
     set to_at = coalesce(s.at, 'infinity'), to_event = coalesce(s.event, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
     from read.joining c
     left join lateral (
       select s.at, s.event from read.separation s
       where s.inner_unit = c.inner_unit and s.outer_unit = c.outer_unit and (s.at, s.event) > (c.at, c.event)
       order by s.at, s.event limit 1
     ) s on true
     where j.event = c.event and c.inner_unit = any($1)`,
    [inner],
  );
}

const topRow = z.object({ unit: z.string(), outermost: z.string().nullable() });

/**
 * Sets the outermost unit of each unit and of all that is inside it. Where a unit is in two at once, the latest joining
 * counts; a circle ends before a unit comes again.
 */
async function climb(db: Queryable, units: readonly string[]): Promise<void> {
  const { rows } = await db.query(
    `with recursive affected(unit) as (
       select unnest($1::text[]) collate "C"
       union
       select j.inner_unit from affected a join read.joining j on j.outer_unit = a.unit and j.to_at = 'infinity'
     ), climbing as (
       select a.unit as start, a.unit, 0 as depth from affected a
       union all
       select c.start, o.outer_unit, c.depth + 1
       from climbing c
       cross join lateral (
         select j.outer_unit from read.joining j
         where j.inner_unit = c.unit and j.to_at = 'infinity'
         order by j.at desc, j.event desc limit 1
       ) o
     ) cycle unit set is_circle using path
     select distinct on (start) start as unit, nullif(unit, start) as outermost
     from climbing where not is_circle order by start, depth desc`,
    [units],
  );
  const tops = rows.map((row) => topRow.parse(row));
  // In two statements, by the primary key: the planner cannot know how few of the climbing there are.
  await db.query(
    `update read.unit u set outermost = top.outermost
     from unnest($1::text[], $2::text[]) as top(unit, outermost)
     where u.unit = top.unit collate "C"`,
    [tops.map(({ unit }) => unit), tops.map(({ outermost }) => outermost)],
  );
}

/** Brings the stays of units in others up to date after joinings or separations came or were voided. */
export async function refreshJoinings(db: Queryable, inner: readonly string[]): Promise<void> {
  await endJoinings(db, inner);
  await climb(db, inner);
}
