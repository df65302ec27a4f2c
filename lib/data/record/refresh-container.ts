import { findContainerHistory } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { foldContainer } from '@/lib/domain/packing/fold-container';
import { formatInstant } from '@/lib/domain/time';

/** Folds a container's own events again, and hands its shipment on to everything inside it. */
export async function refreshContainer(db: Queryable, container: string): Promise<void> {
  const state = foldContainer(await findContainerHistory(db, container));
  const { inside, shipping } = state;
  await db.query(
    `insert into read.container (container, inside, own_shipment, own_customer, own_destination, own_shipped_at)
     values ($1, $2, $3, $4, $5, $6)
     on conflict (container) do update set inside = excluded.inside, own_shipment = excluded.own_shipment,
       own_customer = excluded.own_customer, own_destination = excluded.own_destination,
       own_shipped_at = excluded.own_shipped_at`,
    [
      container,
      inside,
      shipping?.shipment ?? null,
      shipping?.customer ?? null,
      shipping?.destination ?? null,
      shipping === null ? null : formatInstant(shipping.atUs),
    ],
  );
  if (inside !== null) await ensureContainer(db, inside);
  await shipContents(db, container);
}

/**
 * Sets the shipment of a container and of everything inside it: each climbs to the nearest container that was shipped
 * itself. A circle ends before a container comes again, so the result does not depend on where one begins.
 */
async function shipContents(db: Queryable, container: string): Promise<void> {
  await db.query(
    `with recursive affected(container) as (
       select $1::text collate "C"
       union
       select c.container from affected a join read.container c on c.inside = a.container
     ), climbing as (
       select a.container as start, c.container, c.inside, c.own_shipment, c.own_customer, 0 as depth
       from affected a join read.container c on c.container = a.container
       union all
       select k.start, c.container, c.inside, c.own_shipment, c.own_customer, k.depth + 1
       from climbing k join read.container c on c.container = k.inside
       where k.own_shipment is null
     ) cycle container set is_circle using path
     update read.container c set shipment = top.own_shipment, customer = top.own_customer
     from (
       select distinct on (start) start, own_shipment, own_customer
       from climbing where not is_circle order by start, depth desc
     ) top
     where c.container = top.start
       and (c.shipment, c.customer) is distinct from (top.own_shipment, top.own_customer)`,
    [container],
  );
}

/** Makes a container known; it has no event of its own before something goes into it. */
export async function ensureContainer(db: Queryable, container: string): Promise<void> {
  await db.query('insert into read.container (container) values ($1) on conflict do nothing', [container]);
}
