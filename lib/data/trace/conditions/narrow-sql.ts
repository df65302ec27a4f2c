import { conditionSql } from '@/lib/data/trace/conditions/condition-sql';
import { narrowBitOf } from '@/lib/data/trace/conditions/narrow-doubt';
import { parameters } from '@/lib/data/trace/conditions/parameters';
import type { Statement } from '@/lib/data/trace/where-used-sql';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import type { Plant } from '@/lib/domain/plant/plant';

/**
 * The statement that ends in two tables. `standing`: each unit that any condition names, with its truth under every
 * one (0 no, 1 possible, 2 yes, a must-not turned round, as `lib/domain/genealogy/narrowing.ts` tells), its verdict,
 * which is the smallest of them, and its doubts. `answer`: the units that are not ruled out, with their places.
 *
 * Direction: condition → units, for each of them; then one grouping by unit. Cost: the rows that the conditions find,
 * at most every unit once a condition; plus one place look-up a unit of the answer.
 */
export function narrowStatement(
  conditions: readonly Condition[],
  scope: { plant: Plant; windowsOf: (condition: Condition) => readonly DoubtWindow[] },
): Statement {
  const { values, parameter } = parameters();
  const found = conditions.map((condition, index) => {
    const columns = `unit, ${index} as condition, ${truthSql(condition)} as truth, ${doubtSql(condition)} as doubt`;
    return `select ${columns} from (${conditionSql(condition, { ...scope, parameter })}) c${index}`;
  });
  const truths = conditions.map(
    ({ must }, index) => `coalesce(max(truth) filter (where condition = ${index}), ${must ? 0 : 2})`,
  );
  const text = `
with found as (
${found.join('\nunion all\n')}
),
standing as (
  select unit, array[${truths.join(', ')}] as truths, least(${truths.join(', ')}) as verdict,
    coalesce(jsonb_agg(jsonb_build_object('condition', condition, 'doubt', doubt) order by condition)
      filter (where truth = 1), '[]') as doubts
  from found group by unit
),
answer as (
  select s.unit, u.product, u.revision, case s.verdict when 2 then 'certain' else 'possible' end as certainty,
    case when o.place = 'container' and c.shipment is not null then 'shipped' else o.place end as place,
    o.place_station as station, o.container, c.shipment, c.customer, s.truths, s.doubts,
    exists (select from read.hold h
      where h.target_kind = 'unit' and h.target = s.unit and h.released_at = 'infinity') as is_held
  from standing s
  left join read.unit u on u.unit = s.unit
  left join read.unit o on o.unit = coalesce(u.outermost, s.unit)
  left join read.container c on c.container = o.container and o.place = 'container'
  where s.verdict > 0
)`;
  return { text, values };
}

/** A must-not is broken for certain by the unit's own record only: a unit inside it may not be the one that matters. */
function truthSql({ must }: Condition): string {
  return must
    ? 'case when is_certain then 2 else 1 end'
    : 'case when is_certain and is_own then 0 else 1 end';
}

function doubtSql({ must }: Condition): string {
  return must ? 'doubt' : `case when is_certain then ${narrowBitOf('inner')} else doubt end`;
}
