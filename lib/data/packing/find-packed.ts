import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { PackedContainer, PackedUnit } from '@/lib/domain/packing/packing-record';
import { formatInstant } from '@/lib/domain/time';

const containerSchema = z.object({
  container: z.string(),
  inside: z.string().nullable(),
  own_shipment: z.string().nullable(),
  own_customer: z.string().nullable(),
  own_destination: z.string().nullable(),
  own_shipped_at: z.number().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
});

/** A container as its own events and those around it leave it. */
export type ContainerRow = z.infer<typeof containerSchema>;

/** One container, or null when nothing names it. */
export async function findContainer(db: Queryable, container: string): Promise<ContainerRow | null> {
  const { rows } = await db.query('select * from read.container where container = $1', [container]);
  return rows[0] === undefined ? null : containerSchema.parse(rows[0]);
}

/** Containers around a container, innermost first; a container comes once, so a ring of nesting ends. */
export async function findAround(db: Queryable, container: string): Promise<string[]> {
  const { rows } = await db.query(
    `with recursive around as (
       select inside as container, 1 as depth, array[$1::text collate "C"] as seen
       from read.container where container = $1 and inside is not null
       union
       select c.inside, a.depth + 1, a.seen || c.container
       from around a
       join read.container c on c.container = a.container
       where c.inside is not null and c.inside <> all(a.seen || c.container)
     )
     select container from around order by depth`,
    [container],
  );
  return rows.map((row) => z.object({ container: z.string() }).parse(row).container);
}

// Containers in the given ones at any depth, themselves included, each with the given one that it is in.
const WITHIN = `with recursive within as (
  select c collate "C" as top, c collate "C" as container from unnest($1::text[]) as c
  union
  select w.top, c.container from within w join read.container c on c.inside = w.container
)`;

const countSchema = z.object({ container: z.string(), units: z.number() });

/** How many units are in each of the given containers, at any depth; by unit_by_container. */
export async function countPacked(db: Queryable, containers: readonly string[]): Promise<PackedContainer[]> {
  const { rows } = await db.query(
    `${WITHIN}
     select w.top as container, count(u.unit) as units
     from within w
     left join read.unit u on u.container = w.container and u.place = 'container'
     group by w.top order by w.top collate "C"`,
    [containers],
  );
  return rows.map((row) => countSchema.parse(row));
}

/** Containers directly in a container. */
export async function findNested(db: Queryable, container: string): Promise<string[]> {
  const { rows } = await db.query(
    'select container from read.container where inside = $1 order by container',
    [container],
  );
  return rows.map((row) => z.object({ container: z.string() }).parse(row).container);
}

const unitSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  container: z.string(),
  is_held: z.boolean(),
});

/** Units in the given containers at any depth, by serial, at most `countMax`. */
export async function findPackedUnits(
  db: Queryable,
  containers: readonly string[],
  countMax: number,
): Promise<PackedUnit[]> {
  const { rows } = await db.query(
    `${WITHIN}
     select distinct u.unit, u.product, u.revision, u.container, exists (
       select from read.hold h
       where h.target_kind = 'unit' and h.target = u.unit and h.released_at = 'infinity') as is_held
     from within w
     join read.unit u on u.container = w.container and u.place = 'container'
     order by u.unit limit $2`,
    [containers, countMax],
  );
  return rows.map((row) => {
    const { is_held: isHeld, ...unit } = unitSchema.parse(row);
    return { ...unit, isHeld };
  });
}

const shippedSchema = z.object({
  container: z.string(),
  customer: z.string(),
  destination: z.string().nullable(),
  at: z.number(),
});

/** Containers that were shipped as a shipment themselves, in order; by container_by_shipment. */
export async function findShippedContainers(
  db: Queryable,
  shipment: string,
): Promise<{ container: string; customer: string; destination: string | null; at: string }[]> {
  const { rows } = await db.query(
    `select container, own_customer as customer, own_destination as destination, own_shipped_at as at
     from read.container where own_shipment = $1 order by container`,
    [shipment],
  );
  return rows.map((row) => {
    const { at, ...shipped } = shippedSchema.parse(row);
    return { ...shipped, at: formatInstant(at) };
  });
}

/**
 * Units whose last way into one of the given containers ended with their return, by serial.
 *
 * Direction: containers → packings (event_of_container) → the unit's next placing event (event_of_unit).
 */
export async function findCameBack(db: Queryable, containers: readonly string[]): Promise<string[]> {
  const { rows } = await db.query(
    `${WITHIN}
     select distinct p.unit
     from within w
     join log.event p on (p.body ->> 'container') collate "C" = w.container and p.type = 'unit.packed'
     cross join lateral (
       select e.type from log.event e
       where e.unit = p.unit and e.type in ('unit.packed', 'unit.unpacked', 'unit.returned')
         and (e.at, e.id) > (p.at, p.id)
         and not exists (select from read.voided v where v.event = e.id)
       order by e.at, e.id limit 1
     ) next
     where next.type = 'unit.returned'
       and not exists (select from read.voided v where v.event = p.id)
     order by p.unit`,
    [containers],
  );
  return rows.map((row) => z.object({ unit: z.string() }).parse(row).unit);
}
