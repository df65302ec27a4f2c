import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { type ReplicaUnit, replicaUnitSchema } from '@/lib/domain/replica/replica-answer';

const rowSchema = replicaUnitSchema.omit({ lastAtUs: true }).extend({ last_at: z.number().nullable() });

const COLUMNS = `u.unit, u.state, u.last_at,
  (select j.outer_unit from read.joining j
   where j.inner_unit = u.unit and j.to_at = 'infinity' order by j.at desc, j.event desc limit 1) as outer,
  (select c.shipment from read.container c where c.container = u.container and u.place = 'container') as shipment,
  coalesce((select jsonb_agg(jsonb_build_object('hold', h.hold, 'reason', h.reason) order by h.placed_at, h.hold)
    from read.hold h
    where h.target_kind = 'unit' and h.target = u.unit and h.released_at = 'infinity'), '[]') as holds`;

/** Units by code as the gate asks for them; a code that nobody knows is absent. By keys, one row each. */
export async function findUnitsByCode(db: Queryable, units: readonly string[]): Promise<ReplicaUnit[]> {
  if (units.length === 0) return [];
  const { rows } = await db.query(
    `select ${COLUMNS} from read.unit u where u.unit = any($1) order by u.unit`,
    [units],
  );
  return rows.map(read);
}

/**
 * The units that may come to a station without the server: those due or failed at its operation first, then the others
 * in the plant, the latest first; at most `max`. Reads the units of the plant once; a second for 50,000.
 */
export async function findUnitsDue(db: Queryable, operation: string, max: number): Promise<ReplicaUnit[]> {
  const { rows } = await db.query(
    `select ${COLUMNS}
     from (
       select * from read.unit
       where place is distinct from 'scrapped' and place is distinct from 'container'
       order by (next_operation is not distinct from $1 or open_failure is not distinct from $1) desc,
         last_at desc nulls last, unit
       limit $2
     ) u`,
    [operation, max],
  );
  return rows.map(read);
}

function read(row: unknown): ReplicaUnit {
  const { last_at: lastAtUs, ...unit } = rowSchema.parse(row);
  return { ...unit, lastAtUs };
}
