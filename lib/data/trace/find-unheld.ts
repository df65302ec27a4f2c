import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { prepareNarrow } from '@/lib/data/trace/conditions/prepare-narrow';
import type { HoldWish } from '@/lib/domain/holds/hold-plan';
import type { Plant } from '@/lib/domain/plant/plant';

const rowSchema = z.object({ units: z.array(z.string()), count: z.number() });

/**
 * The first units of a narrowed answer that no open hold of the same reason stops, sorted, at most `countMax`, and how
 * many there are in all. Cost: that of the answer.
 */
export async function findUnheld(
  db: Queryable,
  { conditions, group, reason }: HoldWish,
  { plant, countMax }: { plant: Plant; countMax: number },
): Promise<{ units: string[]; count: number }> {
  const { text, values } = await prepareNarrow(db, conditions, plant);
  const [certainOnly, why, limit] = [1, 2, 3].map((number) => `$${values.length + number}`);
  const { rows } = await db.query(
    `${text},
unheld as (
  select a.unit from answer a
  where (not ${certainOnly}::boolean or a.certainty = 'certain') and not exists (
    select from read.hold h where h.target_kind = 'unit' and h.target = a.unit
      and h.released_at = 'infinity' and h.reason = ${why}::text)
)
select (select count(*) from unheld) as count,
  array(select unit from unheld order by unit limit ${limit}::integer) as units`,
    [...values, group === 'certain', reason, countMax],
  );
  return rowSchema.parse(rows[0]);
}
