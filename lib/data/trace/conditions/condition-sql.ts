import { narrowBitOf } from '@/lib/data/trace/conditions/narrow-doubt';
import type { Parameter } from '@/lib/data/trace/conditions/parameters';
import { workFactsSql } from '@/lib/data/trace/conditions/work-facts-sql';
import { whereUsedStatement } from '@/lib/data/trace/where-used-sql';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { Condition, ConditionOf } from '@/lib/domain/genealogy/narrow-question';
import type { Plant } from '@/lib/domain/plant/plant';

/** `windowsOf` tells in which times the record itself is in doubt about what a condition is about. */
type Scope = {
  parameter: Parameter;
  plant: Plant;
  windowsOf: (condition: Condition) => readonly DoubtWindow[];
};

/**
 * The units that meet what a condition says, one row each: (unit, is_certain, is_own, doubt). `is_own` says that it
 * is the unit's own record that proves it, and not only that of a unit inside it; it matters to a must-not.
 */
export function conditionSql(condition: Condition, scope: Scope): string {
  switch (condition.kind) {
    case 'used':
      return usedSql(condition, scope);
    case 'processed':
    case 'defect':
    case 'repaired':
      return outwardsSql(workFactsSql(condition, scope));
    case 'started':
      return startedSql(condition, scope);
    case 'product':
      return productSql(condition, scope);
    case 'place':
      return placeSql(condition, scope);
    case 'packed':
      return packedSql(condition, scope);
    default:
      return condition satisfies never;
  }
}

/** By where-used. What a unit inside may have brought is not its own: then that unit is in the same answer. */
function usedSql(condition: ConditionOf<'used'>, { parameter, windowsOf }: Scope): string {
  const { must: _, kind: __, ...wanted } = condition;
  const { text, values } = whereUsedStatement({ ...wanted, limit: 1 }, windowsOf(condition));
  const taken = values.map((value) => parameter(value, 'text').replace('::text', ''));
  const renumbered = text.replaceAll(/\$(\d+)/g, (_match, number: string) => taken[Number(number) - 1] ?? '');
  return `select * from (${renumbered}
  select a.unit, a.certainty = 'certain' as is_certain,
    not exists (select from read.joining j join answer i on i.unit = j.inner_unit where j.outer_unit = a.unit)
      as is_own,
    a.doubt
  from answer a) used`;
}

const LAST_EVENT = "'ffffffff-ffff-ffff-ffff-ffffffffffff'::uuid";

// Of equal facts of one unit the earliest counts: it is in every outer unit that a later one is in.
const outwardsSql = (facts: string) => `select * from (
  with recursive fact as (${facts}),
  earliest as (
    select distinct on (unit, is_certain) unit, is_certain, at, event from fact order by unit, is_certain, at, event
  ),
  held as (
    select unit, is_certain, at, event, 'infinity'::timestamptz as to_at, ${LAST_EVENT} as to_event,
      array[unit] as inside
    from earliest
    union
    select j.outer_unit, h.is_certain,
      case when (j.at, j.event) > (h.at, h.event) then j.at else h.at end,
      case when (j.at, j.event) > (h.at, h.event) then j.event else h.event end,
      case when (j.to_at, j.to_event) < (h.to_at, h.to_event) then j.to_at else h.to_at end,
      case when (j.to_at, j.to_event) < (h.to_at, h.to_event) then j.to_event else h.to_event end,
      h.inside || j.outer_unit
    from held h join read.joining j on j.inner_unit = h.unit
    where (h.at, h.event) < (j.to_at, j.to_event) and (j.at, j.event) < (h.to_at, h.to_event)
      and j.outer_unit <> all(h.inside)
  )
  select unit, bool_or(is_certain) as is_certain,
    bool_or(cardinality(inside) = 1 and is_certain) or not bool_or(is_certain) as is_own,
    ${narrowBitOf('clock')} as doubt
  from held group by unit) work`;

// A unit whose start is not recorded may be of any product, order, panel and board lot.
const UNSTARTED = `select u.unit, false as is_certain, true as is_own, ${narrowBitOf('unstarted')} as doubt
  from read.unit u where u.product is null and u.last_event is not null
  union
  select j.outer_unit, false, true, ${narrowBitOf('unstarted')}
  from read.joining j left join read.unit u on u.unit = j.outer_unit where u.product is null`;

/** By the start itself; of units without one nothing can be excluded. */
function startedSql(condition: ConditionOf<'started'>, scope: Scope): string {
  return `select * from (
  with known as (${outwardsSql(workFactsSql(condition, scope))})
  select * from known
  union all
  select * from (${UNSTARTED}) unstarted where not exists (select from known k where k.unit = unstarted.unit)) started`;
}

/** One pass over the units: products are few and have no index of their own. */
function productSql({ product, revision }: ConditionOf<'product'>, { parameter }: Scope): string {
  const tests = [`u.product = ${parameter(product, 'text')}`];
  if (revision !== undefined) tests.push(`u.revision = ${parameter(revision, 'text')}`);
  return `select u.unit, true as is_certain, true as is_own, 0 as doubt
  from read.unit u where ${tests.join(' and ')}
  union all
  ${UNSTARTED}`;
}

/** One pass over the units; an inner one is where its outermost one is. */
function placeSql({ place, station }: ConditionOf<'place'>, { parameter }: Scope): string {
  const tests = [
    `case when o.place = 'container' and c.shipment is not null then 'shipped' else o.place end
       = ${parameter(place, 'text')}`,
  ];
  if (station !== undefined) tests.push(`o.place_station = ${parameter(station, 'text')}`);
  return `select u.unit, true as is_certain, true as is_own, 0 as doubt
  from read.unit u
  join read.unit o on o.unit = coalesce(u.outermost, u.unit)
  left join read.container c on c.container = o.container and o.place = 'container'
  where ${tests.join(' and ')}`;
}

/** Containers → what is nested in them → units in those → the units inside them. */
function packedSql({ container, shipment, customer }: ConditionOf<'packed'>, { parameter }: Scope): string {
  const tests = ['true'];
  if (shipment !== undefined) tests.push(`c.shipment = ${parameter(shipment, 'text')}`);
  if (customer !== undefined) tests.push(`c.customer = ${parameter(customer, 'text')}`);
  const within =
    container === undefined
      ? 'select container from read.container'
      : `select ${parameter(container, 'text')} collate "C" as container
    union
    select c.container from within w join read.container c on c.inside = w.container`;
  return `select * from (
  with recursive within as (${within}),
  box as (select c.container from within w join read.container c on c.container = w.container where ${tests.join(' and ')}),
  inside as (
    select u.unit, u.unit as outermost from box b join read.unit u on u.container = b.container
    where u.place = 'container' and u.outermost is null
    union
    select j.inner_unit, i.outermost from inside i join read.joining j on j.outer_unit = i.unit and j.to_at = 'infinity'
  )
  select i.unit, true as is_certain, true as is_own, 0 as doubt
  from inside i left join read.unit u on u.unit = i.unit
  where coalesce(u.outermost, i.unit) = i.outermost) packed`;
}
