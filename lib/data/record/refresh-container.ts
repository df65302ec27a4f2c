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
  await db.query(
    `with recursive down as (
       select c.container, coalesce(c.own_shipment, p.shipment) as shipment,
              case when c.own_shipment is null then p.customer else c.own_customer end as customer
       from read.container c left join read.container p on p.container = c.inside
       where c.container = $1
       union all
       select c.container, coalesce(c.own_shipment, d.shipment),
              case when c.own_shipment is null then d.customer else c.own_customer end
       from down d join read.container c on c.inside = d.container
     ) cycle container set is_circle using path
     update read.container c set shipment = d.shipment, customer = d.customer
     from down d where d.container = c.container and not d.is_circle`,
    [container],
  );
}

/** Makes a container known; it has no event of its own before something goes into it. */
export async function ensureContainer(db: Queryable, container: string): Promise<void> {
  await db.query('insert into read.container (container) values ($1) on conflict do nothing', [container]);
}
