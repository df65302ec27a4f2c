import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { placeOf } from '@/lib/data/trace/where-used';
import { type Place, placeKindSchema } from '@/lib/domain/genealogy/answer';

const rowSchema = z.object({
  place: placeKindSchema.nullable(),
  station: z.string().nullable(),
  container: z.string().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
});

/** Where a unit is now: an inner unit has the place of its outermost one. By keys: read.unit twice, read.container. */
export async function findUnitPlace(db: Queryable, unit: string): Promise<Place> {
  const { rows } = await db.query(
    `select case when p.place = 'container' and c.shipment is not null then 'shipped' else p.place end as place,
       p.place_station as station, p.container, c.shipment, c.customer
     from read.unit u
     join read.unit p on p.unit = coalesce(u.outermost, u.unit)
     left join read.container c on c.container = p.container and p.place = 'container'
     where u.unit = $1`,
    [unit],
  );
  return rows[0] === undefined ? null : placeOf(rowSchema.parse(rows[0]));
}
