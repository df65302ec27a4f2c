import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

/** Units of one text. */
const PAGE_SIZE = 1000;

const rowSchema = z.object({ units: z.string() });

/** A unit as `replicaUnitSchema` has it, as JSON text. */
const UNIT = `json_build_object(
  'unit', u.unit,
  'state', u.state,
  'lastAtUs', (extract(epoch from u.last_at) * 1000000)::bigint,
  'outer', (select j.outer_unit from read.joining j
    where j.inner_unit = u.unit and j.to_at = 'infinity' order by j.at desc, j.event desc limit 1),
  'shipment', (select c.shipment from read.container c where c.container = u.container and u.place = 'container'),
  'holds', coalesce((select json_agg(json_build_object('hold', h.hold, 'reason', h.reason) order by h.placed_at, h.hold)
    from read.hold h
    where h.target_kind = 'unit' and h.target = u.unit and h.released_at = 'infinity'), '[]')
)::text`;

/** Units by code as the gate asks for them, as JSON texts of one and more; a code that nobody knows is absent. By keys, one row each. */
export async function findUnitsByCode(db: Queryable, units: readonly string[]): Promise<string[]> {
  if (units.length === 0) return [];
  const { rows } = await db.query(
    `select ${UNIT} as units from read.unit u where u.unit = any($1) order by u.unit`,
    [units],
  );
  return rows.map((row) => rowSchema.parse(row).units);
}

/** Scrapped, packed and shipped units that are kept: who comes back is nearly always one of the latest. */
const FINISHED_MAX = 5000;

/**
 * The units that may come to a station without the server: those due or failed at its operation first, then the latest
 * that are scrapped or packed, which must not pass for unknown ones, then the others in the plant, the latest first; at
 * most `max`. As JSON texts of a thousand each, joined by commas: a server that read and wrote each of 50,000 would let
 * every tablet wait meanwhile. Reads the units of the plant once; a second for 50,000.
 */
export async function findUnitsDue(db: Queryable, operation: string, max: number): Promise<string[]> {
  const { rows } = await db.query(
    `select string_agg(${UNIT}, ',' order by u.number) as units
     from (
       select *, row_number() over (order by rank, last_at desc nulls last, unit) as number
       from (
         select p.*,
           case when next_operation is not distinct from $1 or open_failure is not distinct from $1 then 1 else 3 end
             as rank
         from read.unit p
         where place is distinct from 'scrapped' and place is distinct from 'container'
         union all
         (select f.*, 2 from read.unit f where place in ('scrapped', 'container') order by last_at desc limit $4)
       ) kept
       order by number
       limit $2
     ) u
     group by (u.number - 1) / $3::integer
     order by (u.number - 1) / $3::integer`,
    [operation, max, PAGE_SIZE, FINISHED_MAX],
  );
  return rows.map((row) => rowSchema.parse(row).units);
}
