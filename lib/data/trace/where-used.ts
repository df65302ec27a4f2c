import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import { prepareWhereUsed } from '@/lib/data/trace/prepare-where-used';
import { readDoubt } from '@/lib/data/trace/slot-doubt';
import {
  type Counts,
  certaintySchema,
  countsSchema,
  type Place,
  type PlaceKind,
  placeKindSchema,
  relationSchema,
  type UsedUnit,
} from '@/lib/domain/genealogy/answer';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

const unitRowSchema = z.object({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  certainty: certaintySchema,
  relation: relationSchema,
  place: placeKindSchema.nullable(),
  station: z.string().nullable(),
  container: z.string().nullable(),
  shipment: z.string().nullable(),
  customer: z.string().nullable(),
  through: z.array(z.string()),
  doubt: z.number().int(),
});

/** A row of `answer` as the wire tells it. */
export function readUsedUnit(row: unknown): UsedUnit {
  const { unit, product, revision, certainty, relation, through, doubt, ...where } = unitRowSchema.parse(row);
  const used = { unit, product, revision, certainty, relation, place: placeOf(where), through };
  return certainty === 'certain' ? used : { ...used, because: readDoubt(doubt) };
}

/** A place from the columns that hold it. */
export function placeOf(row: {
  place: PlaceKind | null;
  station: string | null;
  container: string | null;
  shipment: string | null;
  customer: string | null;
}): Place {
  const { place, station, container, shipment, customer } = row;
  switch (place) {
    case 'station':
      return { kind: 'station', station };
    case 'container':
      return { kind: 'container', container: container ?? '' };
    case 'shipped':
      return {
        kind: 'shipped',
        container: container ?? '',
        shipment: shipment ?? '',
        customer: customer ?? '',
      };
    case 'stock':
    case 'returned':
    case 'scrapped':
      return { kind: place };
    case null:
      return null;
    default:
      return place satisfies never;
  }
}

const pageRowSchema = z.object({ counts: countsSchema, units: z.array(z.unknown()) });

/** A page of units with the counts over all of them; `next` is the last unit when there are more. */
export async function findWhereUsed(
  db: Queryable,
  question: WhereUsedQuestion,
): Promise<{ counts: Counts; units: UsedUnit[]; next: string | null }> {
  const { text, values } = await prepareWhereUsed(db, question);
  const cursor = values.length + 1;
  const statement = `${text}
select
  (select json_build_object(
     'units', count(*),
     'certain', count(*) filter (where certainty = 'certain'),
     'possible', count(*) filter (where certainty = 'possible'),
     'contains', count(*) filter (where relation = 'contains'),
     'formerly', count(*) filter (where relation = 'formerly'),
     'touched', count(*) filter (where relation = 'touched'),
     'byPlace', json_build_object(
       'station', count(*) filter (where place = 'station'),
       'stock', count(*) filter (where place = 'stock'),
       'container', count(*) filter (where place = 'container'),
       'shipped', count(*) filter (where place = 'shipped'),
       'returned', count(*) filter (where place = 'returned'),
       'scrapped', count(*) filter (where place = 'scrapped')))
   from answer) as counts,
  (select coalesce(json_agg(page), '[]')
   from (select * from answer where $${cursor}::text is null or unit > $${cursor}::text collate "C"
         order by unit limit $${cursor + 1}) page) as units`;
  const { rows } = await db.query(statement, [...values, question.cursor ?? null, question.limit + 1]);
  const { counts, units } = pageRowSchema.parse(rows[0]);
  const page = units.slice(0, question.limit).map(readUsedUnit);
  const next = units.length > question.limit ? (page.at(-1)?.unit ?? null) : null;
  return { counts, units: page, next };
}
