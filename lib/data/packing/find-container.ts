import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({
  inside: z.string().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
  own_shipment: z.string().nullable(),
  own_destination: z.string().nullable(),
});

/** What is known of a container: what is around it, and the shipment that it left with. */
export type ContainerRow = {
  inside: string | null;
  shipment: string | null;
  customer: string | null;
  destination: string | null;
  isShippedItself: boolean;
};

/** A container by its key; null when nothing ever went into it. */
export async function findContainer(db: Queryable, container: string): Promise<ContainerRow | null> {
  const { rows } = await db.query(
    `select inside, shipment, customer, own_shipment, own_destination from read.container where container = $1`,
    [container],
  );
  if (rows[0] === undefined) return null;
  const { inside, shipment, customer, own_shipment, own_destination } = rowSchema.parse(rows[0]);
  return { inside, shipment, customer, destination: own_destination, isShippedItself: own_shipment !== null };
}
