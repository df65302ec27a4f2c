import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import {
  FLOOR_UNITS_PAGE,
  type FloorUnits,
  type FloorUnitsQuestion,
  type Trouble,
} from '@/lib/domain/floor/floor-units';
import type { Place, PlaceKind } from '@/lib/domain/genealogy/answer';
import { formatInstant } from '@/lib/domain/time';

const rowSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  place_station: z.string().nullable(),
  container: z.string().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
  open_failure: z.string().nullable(),
  next_operation: z.string().nullable(),
  is_held: z.boolean(),
  is_unsigned: z.boolean(),
  last_at: z.number().nullable(),
  count: z.number(),
});

/** A packed unit is in its container until that, or one around it, is shipped. */
const PLACES: Record<PlaceKind, string> = {
  station: `u.place = 'station'`,
  stock: `u.place = 'stock'`,
  container: `u.place = 'container' and c.shipment is null`,
  shipped: `u.place = 'container' and c.shipment is not null`,
  returned: `u.place = 'returned'`,
  scrapped: `u.place = 'scrapped'`,
};

const TROUBLES: Record<Trouble, string> = {
  failed: 'open_failure is not null',
  held: 'is_held',
  unsigned: 'is_unsigned',
};

/**
 * The units behind a count of the floor: those of one place that are in no other unit, at one station, with one
 * trouble; those with an open failure first, then those that wait longest. Direction: place → units (unit_by_place for
 * stations and returns, else all units); cost: that of the units in the place, which are sorted, so ask seldom.
 */
export async function findFloorUnits(
  db: Queryable,
  { place, station, trouble, page }: FloorUnitsQuestion,
): Promise<FloorUnits> {
  const { rows } = await db.query(
    `with here as (
       select u.unit, u.product, u.revision, u.place_station, u.container, c.shipment, c.customer, u.open_failure,
         u.next_operation, u.last_at,
         exists (select from read.hold h
           where h.target_kind = 'unit' and h.target = u.unit and h.released_at = 'infinity') as is_held,
         u.place = 'stock' and not coalesce((u.state ->> 'isSigned')::boolean, false) as is_unsigned
       from read.unit u
       left join read.container c on c.container = u.container
       where u.outermost is null and ${PLACES[place]} and ($1::text is null or u.place_station = $1)
     )
     select here.*, count(*) over () as count from here
     ${trouble === undefined ? '' : `where ${TROUBLES[trouble]}`}
     order by open_failure is null, last_at, unit
     limit ${FLOOR_UNITS_PAGE} offset $2`,
    [station ?? null, (page - 1) * FLOOR_UNITS_PAGE],
  );
  const found = rows.map((row) => rowSchema.parse(row));
  return {
    count: found[0]?.count ?? 0,
    units: found.map((row) => ({
      unit: row.unit,
      product: row.product,
      revision: row.revision,
      place: placeOf(place, row),
      openFailure: row.open_failure,
      nextOperation: row.next_operation,
      isHeld: row.is_held,
      isUnsigned: row.is_unsigned,
      lastAt: row.last_at === null ? null : formatInstant(row.last_at),
    })),
  };
}

function placeOf(kind: PlaceKind, row: z.infer<typeof rowSchema>): Place {
  switch (kind) {
    case 'station':
      return { kind, station: row.place_station };
    case 'container':
      return { kind, container: row.container ?? '' };
    case 'shipped':
      return {
        kind,
        container: row.container ?? '',
        shipment: row.shipment ?? '',
        customer: row.customer ?? '',
      };
    case 'stock':
    case 'returned':
    case 'scrapped':
      return { kind };
    default:
      return kind satisfies never;
  }
}
