import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { ReplicaCursor } from '@/lib/domain/replica/replica-answer';

const rowSchema = z.object({ unit: z.string() });

/**
 * Units whose state, holds, place or outer unit may have changed after a cursor, or null when they are more than `max`:
 * those that the new events name, that they join, hold, release, clear or void, whose containers they move, and that new
 * judgements are about. By position, forwards; the bound ends the search.
 */
export async function findChangedUnits(
  db: Queryable,
  after: ReplicaCursor,
  max: number,
): Promise<string[] | null> {
  const { rows } = await db.query(
    `with recursive fresh as (
       select e.type, e.unit, e.body from log.event e where e.position > $1
       union all
       select t.type, t.unit, t.body from log.event v
       join log.event t on t.id = (v.body ->> 'event')::uuid
       where v.position > $1 and v.type = 'event.voided'
     ),
     moved as (
       select (f.body ->> 'container') collate "C" as container from fresh f where f.type like 'container.%'
       union
       select c.container from moved m join read.container c on c.inside = m.container
     ),
     named as (
       select unit from fresh
       union
       select coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit') from fresh
       where type in ('unit.joined', 'unit.separated', 'part.installed')
       union
       select body -> 'target' ->> 'id' from fresh
       where type = 'hold.placed' and body -> 'target' ->> 'kind' = 'unit'
       union
       select h.target from fresh f join read.hold h on h.hold = (f.body ->> 'hold')::uuid
       where f.type = 'hold.released' and h.target_kind = 'unit'
       union
       select e.unit from fresh f join log.event e on e.id = (f.body ->> 'event')::uuid
       where f.type = 'exception.cleared'
       union
       select e.unit from log.judgement j join log.event e on e.id = j.event where j.position > $2
       union
       select u.unit from moved m join read.unit u on u.container = m.container
     )
     select unit from named where unit is not null limit $3`,
    [after.event, after.judgement, max + 1],
  );
  return rows.length > max ? null : rows.map((row) => rowSchema.parse(row).unit);
}
