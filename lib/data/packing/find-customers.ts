import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowsSchema = z.array(z.object({ customer: z.string() }));

/** Customers to whom something was shipped, at most `count`; by container_by_shipment, some thousands of rows. */
export async function findCustomers(db: Queryable, count: number): Promise<string[]> {
  const { rows } = await db.query(
    `select distinct own_customer collate "C" as customer from read.container
     where own_shipment is not null and own_customer is not null order by 1 limit $1`,
    [count],
  );
  return rowsSchema.parse(rows).map(({ customer }) => customer);
}
