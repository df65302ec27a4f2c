import { findContainerHistory } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { foldContainer } from '@/lib/domain/packing/fold-container';
import { formatInstant } from '@/lib/domain/time';

/** Folds a container's own events again, and hands its shipment on to everything inside it. */
export async function refreshContainer(db: Queryable, container: string): Promise<void> {
  const row = containerRow(container, await findContainerHistory(db, container));
  await db.query(
    `insert into read.container (container, inside, own_shipment, own_customer, own_destination, own_shipped_at)
     values ($1, $2, $3, $4, $5, $6)
     on conflict (container) do update set inside = excluded.inside, own_shipment = excluded.own_shipment,
       own_customer = excluded.own_customer, own_destination = excluded.own_destination,
       own_shipped_at = excluded.own_shipped_at`,
    Object.values(row),
  );
  if (row.inside !== null) await ensureContainers(db, [row.inside]);
  await shipContents(db, [container]);
}

/** A container's row from its own events that count, in order; its place in a shipment is set by `shipContents`. */
export function containerRow(container: string, history: readonly LoggedEvent[]) {
  const { inside, shipping } = foldContainer(history);
  return {
    container,
    inside,
    own_shipment: shipping?.shipment ?? null,
    own_customer: shipping?.customer ?? null,
    own_destination: shipping?.destination ?? null,
    own_shipped_at: shipping === null ? null : formatInstant(shipping.atUs),
  };
}

/**
 * Sets the shipment of containers and of everything inside them: each climbs to the nearest container that was shipped
 * itself. A circle ends before a container comes again, so the result does not depend on where one begins.
 */
export async function shipContents(db: Queryable, containers: readonly string[]): Promise<void> {
  await db.query(
    `with recursive affected(container) as (
       select unnest($1::text[]) collate "C"
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
    [containers],
  );
}

/** Makes containers known; one has no event of its own before something goes into it. */
export async function ensureContainers(db: Queryable, containers: readonly string[]): Promise<void> {
  await db.query('insert into read.container (container) select unnest($1::text[]) on conflict do nothing', [
    containers,
  ]);
}
