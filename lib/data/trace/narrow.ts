import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { readNarrowDoubt } from '@/lib/data/trace/conditions/narrow-doubt';
import { prepareNarrow } from '@/lib/data/trace/conditions/prepare-narrow';
import { placeOf } from '@/lib/data/trace/where-used';
import { type Certainty, certaintySchema, placeKindSchema } from '@/lib/domain/genealogy/answer';
import type { NarrowAnswer, NarrowedGroup, NarrowedUnit } from '@/lib/domain/genealogy/narrow-answer';
import type { NarrowQuestion } from '@/lib/domain/genealogy/narrow-question';
import { countConditions, type Truth } from '@/lib/domain/genealogy/narrowing';
import type { Plant } from '@/lib/domain/plant/plant';

const truthSchema = z.custom<Truth>(
  (value) => value === 0 || value === 1 || value === 2,
  'Expected a truth.',
);

const unitRowSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  certainty: certaintySchema,
  place: placeKindSchema.nullable(),
  station: z.string().nullable(),
  container: z.string().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
  is_held: z.boolean(),
  truths: z.array(truthSchema),
  doubts: z.array(z.object({ condition: z.int(), doubt: z.int() })),
});

/** A row of `answer` as the wire tells it, and its truth under each condition. */
export function readNarrowedUnit(row: unknown): { unit: NarrowedUnit; truths: Truth[] } {
  const { is_held, truths, unit, product, revision, certainty, doubts, ...where } = unitRowSchema.parse(row);
  return {
    unit: {
      unit,
      product,
      revision,
      certainty,
      place: placeOf(where),
      isHeld: is_held,
      doubts: doubts.map(({ condition, doubt }) => ({ condition, because: readNarrowDoubt(doubt) })),
    },
    truths,
  };
}

const pageRowSchema = z.object({
  standings: z.array(z.object({ truths: z.array(truthSchema), units: z.number() })),
  groups: z.array(
    z.object({
      certainty: certaintySchema,
      place: placeKindSchema.nullable(),
      units: z.number(),
      held: z.number(),
    }),
  ),
  units: z.array(z.unknown()),
});

/** A page of the units that no condition rules out, with what each condition does; one statement. */
export async function findNarrowed(
  db: Queryable,
  question: NarrowQuestion,
  plant: Plant,
): Promise<Pick<NarrowAnswer, 'conditions' | 'counts' | 'units' | 'next'>> {
  const { conditions, certainty = null, cursor = null, limit } = question;
  const { text, values } = await prepareNarrow(db, conditions, plant);
  const [group, after, count] = [1, 2, 3].map((number) => `$${values.length + number}`);
  const statement = `${text}
select
  (select coalesce(json_agg(s), '[]') from (
     select truths, count(*) as units from standing group by truths) s) as standings,
  (select coalesce(json_agg(g), '[]') from (
     select certainty, place, count(*) as units, count(*) filter (where is_held) as held
     from answer group by certainty, place) g) as groups,
  (select coalesce(json_agg(page), '[]') from (
     select * from answer
     where (${group}::text is null or certainty = ${group}) and (${after}::text is null or unit > ${after}::text collate "C")
     order by unit limit ${count}) page) as units`;
  const { rows } = await db.query(statement, [...values, certainty, cursor, limit + 1]);
  const { standings, groups, units } = pageRowSchema.parse(rows[0]);
  const counts = countConditions(
    conditions.map(({ must }) => must),
    standings,
  );
  const page = units.slice(0, limit).map((row) => readNarrowedUnit(row).unit);
  const groupOf = (name: Certainty): NarrowedGroup => {
    const ofGroup = groups.filter((row) => row.certainty === name);
    const at = (place: string) => ofGroup.find((row) => row.place === place)?.units ?? 0;
    return {
      units: ofGroup.reduce((sum, row) => sum + row.units, 0),
      held: ofGroup.reduce((sum, row) => sum + row.held, 0),
      byPlace: {
        station: at('station'),
        stock: at('stock'),
        container: at('container'),
        shipped: at('shipped'),
        returned: at('returned'),
        scrapped: at('scrapped'),
      },
    };
  };
  return {
    conditions: conditions.flatMap((condition, index) => {
      const does = counts[index];
      return does === undefined ? [] : [{ condition, ...does }];
    }),
    counts: { certain: groupOf('certain'), possible: groupOf('possible') },
    units: page,
    next: units.length > limit ? (page.at(-1)?.unit ?? null) : null,
  };
}
