import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { PlaceKind } from '@/lib/domain/genealogy/answer';

const rowSchema = z.object({
  station: z.number(),
  stock: z.number(),
  container: z.number(),
  shipped: z.number(),
  returned: z.number(),
  scrapped: z.number(),
});

/**
 * How many units are where, those inside another one not counted again.
 *
 * Direction: all units; cost: the whole of read.unit, so ask seldom.
 */
export async function countPlaces(db: Queryable): Promise<Record<PlaceKind, number>> {
  const { rows } = await db.query(
    `select count(*) filter (where u.place = 'station') as station,
       count(*) filter (where u.place = 'stock') as stock,
       count(*) filter (where u.place = 'container' and c.shipment is null) as container,
       count(*) filter (where u.place = 'container' and c.shipment is not null) as shipped,
       count(*) filter (where u.place = 'returned') as returned,
       count(*) filter (where u.place = 'scrapped') as scrapped
     from read.unit u
     left join read.container c on c.container = u.container
     where u.outermost is null`,
  );
  return rowSchema.parse(rows[0]);
}
