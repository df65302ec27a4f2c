import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { PackPicture } from '@/lib/domain/packing/pack-picture';

const unitsSchema = z.array(
  z.object({ unit: z.string(), product: z.string().nullable(), revision: z.string().nullable() }),
);
const rowSchema = z.object({
  units: unitsSchema,
  containers: z.array(z.object({ container: z.string(), unitCount: z.number() })),
  unit_count: z.number(),
});

/**
 * What is in a container. Direction: container → containers inside it at any depth (container_inside) → their units
 * (unit_by_container). A shipment has some thousands of units; a circle of containers ends the walk.
 */
export async function findContents(
  db: Queryable,
  container: string,
): Promise<Pick<PackPicture, 'units' | 'containers' | 'unitCount'>> {
  const { rows } = await db.query(
    `with recursive down(container, top) as (
       select $1::text collate "C", null::text collate "C"
       union
       select c.container, coalesce(d.top, c.container) from down d join read.container c on c.inside = d.container
     ),
     packed as (
       select d.top, u.unit, u.product, u.revision, u.last_at
       from down d join read.unit u on u.container = d.container and u.place = 'container'
     )
     select
       coalesce((select jsonb_agg(jsonb_build_object('unit', unit, 'product', product, 'revision', revision)
                          order by last_at, unit) from packed where top is null), '[]') as units,
       coalesce((select jsonb_agg(jsonb_build_object('container', t.top, 'unitCount',
                          (select count(*) from packed p where p.top = t.top)) order by t.top)
                 from (select distinct top from down where top is not null) t), '[]') as containers,
       (select count(*)::integer from packed) as unit_count`,
    [container],
  );
  const { unit_count: unitCount, ...contents } = rowSchema.parse(rows[0]);
  return { ...contents, unitCount };
}
