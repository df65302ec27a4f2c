import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const rowSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  station: z.string().nullable(),
  open_failure: z.string().nullable(),
  next_operation: z.string().nullable(),
  is_held: z.boolean(),
  last_at: z.number(),
});

/** A unit in work that does not go on. */
export type StuckUnit = {
  unit: string;
  product: string | null;
  revision: string | null;
  station: string | null;
  openFailure: string | null;
  nextOperation: string | null;
  isHeld: boolean;
  sinceUs: number;
};

/**
 * Units in work that wait longest: those with an open failure first, each in order of waiting; at most `countMax`.
 * Direction: place → units (unit_by_place); bound: the units in work, sorted.
 */
export async function findStuckUnits(db: Queryable, countMax: number): Promise<StuckUnit[]> {
  const { rows } = await db.query(
    `select u.unit, u.product, u.revision, u.place_station as station, u.open_failure, u.next_operation, u.last_at,
       exists (select from read.hold h
         where h.target_kind = 'unit' and h.target = u.unit and h.released_at = 'infinity') as is_held
     from read.unit u
     where u.place = 'station' and u.outermost is null and u.last_at is not null
     order by u.open_failure is null, u.last_at, u.unit
     limit $1`,
    [countMax],
  );
  return rows.map((row) => {
    const { unit, product, revision, station, open_failure, next_operation, is_held, last_at } =
      rowSchema.parse(row);
    return {
      unit,
      product,
      revision,
      station,
      openFailure: open_failure,
      nextOperation: next_operation,
      isHeld: is_held,
      sinceUs: last_at,
    };
  });
}
