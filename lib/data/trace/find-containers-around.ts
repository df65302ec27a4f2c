import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({
  container: z.string(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
});

/** A container with the shipment that it left with itself; null while it has not. */
export type ContainerAround = z.infer<typeof rowSchema>;

/** A container and those around it, innermost first, each once: one look-up by the primary key a level. */
export async function findContainersAround(db: Queryable, container: string): Promise<ContainerAround[]> {
  const { rows } = await db.query(
    `with recursive around as (
       select $1::text collate "C" as container, 0 as depth
       union all
       select c.inside, a.depth + 1
       from around a join read.container c on c.container = a.container
       where c.inside is not null
     ) cycle container set is_circle using path
     select a.container, c.own_shipment as shipment, c.own_customer as customer
     from around a left join read.container c on c.container = a.container
     where not a.is_circle
     order by a.depth`,
    [container],
  );
  return rows.map((row) => rowSchema.parse(row));
}
