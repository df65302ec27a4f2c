import { bitOf, GREY_UNTIL, slotDoubt } from '@/lib/data/trace/slot-doubt';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import { BREADTH_MAX } from '@/lib/domain/genealogy/breadth';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import { formatInstant, instantOf } from '@/lib/domain/time';

// Whether an item is material, and whether its slot supplies positions of a BOM only, each like the other where it is
// unknown; and whether any BOM names the slot.
const SLOT_KIND = `coalesce(i.kind, s.holds, 'reel') in ('reel', 'lot') as is_material,
         coalesce(s.holds, i.kind, 'reel') in ('reel', 'lot') as is_of_bom,
         exists (select from read.bom_slot b where b.station = m.station and b.slot = m.slot) as has_bom`;

/** A statement with its values. */
export type Statement = { text: string; values: unknown[] };

const LAST_EVENT = "'ffffffff-ffff-ffff-ffff-ffffffffffff'::uuid";

/**
 * The statement that ends in a table `answer`: one row a unit with relation, certainty, place and path.
 *
 * Direction: item → mounts → passes (slot draws) and direct draws → salvage → outer units → place.
 * Bounds: each mount is one range of passes for each breadth class; salvage strictly goes forward in order; a unit
 * comes once in a path outwards. Cost: rows found, plus one unit look-up each. Windows of doubt, if there are any, are
 * one more range of passes each.
 */
export function whereUsedStatement(
  question: WhereUsedQuestion,
  windows: readonly DoubtWindow[] = [],
): Statement {
  const values: unknown[] = [];
  const param = (value: unknown, type: string) => {
    values.push(value);
    return `$${values.length}::${type}`;
  };
  const base = hasMaterial(question) ? itemDraws(question, param, windows) : processedDraws(question, param);
  const filter = answerFilter(question, param);
  const text = `
with recursive
${base},
passed_on as (
  ${salvagedFrom('base')}
  union
  ${salvagedFrom('passed_on')}
),
draw as (
  select d.*,
         -- Few units were ever repaired: for all others the positions need no look.
         d.is_material and cardinality(d.positions) > 0
           and (select true from read.removal r where r.unit = d.unit limit 1) is not null as is_repaired
  from (select * from base union all select * from passed_on) d
),
own(unit, is_material, is_certain, doubt, from_at, from_event, to_at, to_event, through) as (
  select unit, is_material, is_certain, doubt, held_at, held_event, 'infinity'::timestamptz, ${LAST_EVENT},
         array[]::text[] collate "C"
  from draw where not is_repaired
  union all
  select d.unit, d.is_material, d.is_certain, d.doubt, d.held_at, d.held_event, coalesce(last.at, 'infinity'),
         coalesce(last.event, ${LAST_EVENT}), array[]::text[] collate "C"
  from draw d
  cross join lateral (
    select first.at, first.event
    from unnest(d.positions) as p(position)
    left join lateral (
      select r.at, r.event from read.removal r
      where r.unit = d.unit and r.position = p.position and (r.at, r.event) > (d.held_at, d.held_event)
      order by r.at, r.event limit 1
    ) first on true
    order by first.at desc nulls first, first.event desc limit 1
  ) last
  where d.is_repaired
),
around as (
  ${joinedFrom('own')}
  union
  ${joinedFrom('around')}
),
held as (
  select * from own union all select * from around
),
ranked as (
  select unit, is_certain, doubt, through,
         case when not is_material then 1 when to_at = 'infinity' then 3 else 2 end as rank
  from held
),
best as (
  select distinct on (unit) unit, rank, through, bool_or(is_certain) over same as is_certain,
         bit_or(case doubt when 0 then ${bitOf('clock')} else doubt end) over same as doubt
  from ranked
  window same as (partition by unit)
  order by unit, rank desc, ranked.is_certain desc, cardinality(through), through
),
answer as (
  select b.unit, u.product, u.revision,
         case when b.is_certain then 'certain' else 'possible' end as certainty,
         b.doubt,
         case b.rank when 3 then 'contains' when 2 then 'formerly' else 'touched' end as relation,
         case when w.place = 'container' and c.shipment is not null then 'shipped' else w.place end as place,
         w.station, w.container, c.shipment, c.customer, b.through
  from best b
  left join read.unit u on u.unit = b.unit
  -- Few units are inside another one: all others are where their own row says.
  left join lateral (
    select o.place, o.place_station, o.container from read.unit o where o.unit = u.outermost offset 0
  ) o on true
  cross join lateral (
    select case when u.outermost is null then u.place else o.place end as place,
           case when u.outermost is null then u.place_station else o.place_station end as station,
           case when u.outermost is null then u.container else o.container end as container
  ) w
  left join lateral (
    select c.shipment, c.customer from read.container c
    where w.place = 'container' and c.container = w.container offset 0
  ) c on true
  ${filter}
)`;
  return { text, values };
}

/** Draws that went on with a part salvaged from a unit of `source`, unless that part had been put in only later. */
function salvagedFrom(source: 'base' | 'passed_on'): string {
  return `select s.unit, d.is_material, d.is_certain, d.doubt, array[s.position] as positions, s.at as held_at,
         s.event as held_event
  from ${source} d
  cross join lateral (
    select s.* from read.salvage s
    where cardinality(d.positions) > 0 and s.from_unit = d.unit and s.from_position = any(d.positions) offset 0
  ) s
  left join lateral (
    select r.at, r.event from read.removal r
    where r.unit = s.from_unit and r.position = s.from_position and (r.at, r.event) < (s.at, s.event)
    order by r.at desc, r.event desc limit 1
  ) cut on true
  where (d.held_at, d.held_event) < (coalesce(cut.at, s.at), coalesce(cut.event, s.event))`;
}

/** The units that units of `source` were inside of, while those held what was drawn. */
function joinedFrom(source: 'own' | 'around'): string {
  return `select j.outer_unit as unit, h.is_material, h.is_certain, h.doubt,
         case when (j.at, j.event) > (h.from_at, h.from_event) then j.at else h.from_at end as from_at,
         case when (j.at, j.event) > (h.from_at, h.from_event) then j.event else h.from_event end as from_event,
         case when (j.to_at, j.to_event) < (h.to_at, h.to_event) then j.to_at else h.to_at end as to_at,
         case when (j.to_at, j.to_event) < (h.to_at, h.to_event) then j.to_event else h.to_event end as to_event,
         h.unit || h.through as through
  from ${source} h
  cross join lateral (select j.* from read.joining j where j.inner_unit = h.unit offset 0) j
  where (j.at, j.event) < (h.to_at, h.to_event) and (h.from_at, h.from_event) < (j.to_at, j.to_event)
    and j.outer_unit <> all(h.unit || h.through)`;
}

type Param = (value: unknown, type: string) => string;

function hasMaterial({ item, lot, part }: WhereUsedQuestion): boolean {
  return item !== undefined || lot !== undefined || part !== undefined;
}

/** Draws of the wanted items: by slot, and those that an event names itself. */
function itemDraws(question: WhereUsedQuestion, param: Param, windows: readonly DoubtWindow[]): string {
  const { item, lot, part, station } = question;
  const wantedBy = (alias: string) => {
    const tests = [];
    if (item !== undefined) tests.push(`${alias}.item = ${param(item, 'text')}`);
    if (lot !== undefined) tests.push(`i.lot = ${param(lot, 'text')}`);
    if (part !== undefined) tests.push(`i.part = ${param(part, 'text')}`);
    return tests;
  };
  const viaItem = lot !== undefined || part !== undefined;
  const itemJoin = (alias: string) => `${viaItem ? '' : 'left '}join read.item i on i.item = ${alias}.item`;
  const atStation = station === undefined ? [] : [`m.station = ${param(station, 'text')}`];
  const mounts = [...wantedBy('m'), ...atStation];
  const endings = [...wantedBy('g'), ...atStation];
  const slotTime = timeTest(question, param, 'p.at', 'p.high - p.at');
  const directTime = timeTest(question, param, 'd.at', 'make_interval(secs => e.uncertainty_ms / 1000.0)');
  const operator = question.operator === undefined ? null : param(question.operator, 'text');
  const direct = [];
  // A board lot is drawn by its code, whether or not an item of that lot was ever received.
  if (lot !== undefined && item === undefined && part === undefined)
    direct.push(
      `(i.lot = ${param(lot, 'text')} or (d.source = 'board_lot' and d.item = ${param(lot, 'text')}))`,
    );
  else direct.push(...wantedBy('d'));
  if (station !== undefined) direct.push(`d.station = ${param(station, 'text')}`);
  if (operator !== null) direct.push(`e.operator = ${operator}`);
  const needsEvent = operator !== null || directTime.test !== 'true';
  const directJoin =
    lot !== undefined && item === undefined && part === undefined ? 'left ' : viaItem ? '' : 'left ';
  const doubt = windows.length === 0 ? null : param(JSON.stringify(windows.map(toRow)), 'jsonb');
  const inSlot = `p.low >= m.from_high and p.high < m.to_low and ${slotTime.certain}`;
  const slotBits = `case when m.is_ending then ${bitOf('splice')} else ${slotDoubt('p', 'm')} end`;
  const byOperator =
    operator === null ? '' : `join log.event e on e.id = p.event and e.operator = ${operator}`;
  const namedDraws = `union all
  select p.unit, coalesce(i.kind, s.holds, 'reel') in ('reel', 'lot'), false, m.bits, coalesce(b.positions, '{}'), p.at,
         p.event
  from (select w.station, w.slot, w.low, w.high, w.bits, n.item from doubt_window w cross join unnest(w.items) as n(item)) m
  ${itemJoin('m')}
  left join read.plant_slot s on s.station = m.station and s.slot = m.slot
  cross join generate_series(0, ${BREADTH_MAX}) as k(breadth)
  join read.pass p on p.station = m.station and p.breadth = k.breadth
    and p.high >= m.low and p.high <= m.high + read.breadth_span(k.breadth) and p.low <= m.high
  left join read.unit u on u.unit = p.unit
  left join read.bom_slot b
    on b.station = m.station and b.slot = m.slot and b.product = u.product and b.revision = u.revision
  ${byOperator}
  where ${mounts.join(' and ')} and (b.slot is not null or coalesce(s.holds, i.kind, 'reel') not in ('reel', 'lot'))
    and ${slotTime.test}`;
  return `${doubt === null ? '' : doubtWindows(doubt)}
-- What stood in a slot; of an item that a splice ended, the grey zone is one more stay, with nothing certain in it.
stay as materialized (
  select m.station, m.slot, m.from_at, m.from_low, greatest(m.from_high, z.grey_until) as from_high,
         m.to_at, m.to_low, m.to_high, z.grey_until, false as is_ending, ${SLOT_KIND}
  from read.mount m
  ${itemJoin('m')}
  left join read.plant_slot s on s.station = m.station and s.slot = m.slot
  left join lateral (${GREY_UNTIL}) z on true
  where ${mounts.join(' and ')} and m.from_at < m.to_at
  union all
  select m.station, m.slot, m.from_at, m.from_low, 'infinity', m.to_at, '-infinity', z.grey_until, z.grey_until,
         true, ${SLOT_KIND}
  from read.splice g
  ${itemJoin('g')}
  join read.mount m on m.event = g.event
  left join read.plant_slot s on s.station = m.station and s.slot = m.slot
  left join lateral (${GREY_UNTIL}) z on true
  where ${endings.join(' and ')} and m.from_at < m.to_at
),
base(unit, is_material, is_certain, doubt, positions, held_at, held_event) as (
  select p.unit, m.is_material,
         ${doubt === null ? inSlot : `${inSlot} and w.bits is null`},
         ${doubt === null ? slotBits : doubtfulBits({ inSlot, slotBits })},
         coalesce(b.positions, '{}'), p.at, p.event
  from stay m
  cross join generate_series(0, ${BREADTH_MAX}) as k(breadth)
  -- Kept apart by the offset: each stay and breadth is one range of the index, whatever the planner thinks of sizes.
  cross join lateral (
    select p.unit, p.at, p.low, p.high, p.event from read.pass p
    where p.station = m.station and p.breadth = k.breadth
      and p.high >= m.from_low and p.high < m.to_high + read.breadth_span(k.breadth) and p.low < m.to_high
    offset 0
  ) p
  -- Where no BOM names the slot, as that of a tool, a unit's product is nothing to it.
  left join lateral (
    select u.product, u.revision from read.unit u where u.unit = p.unit and m.has_bom offset 0
  ) u on true
  left join read.bom_slot b
    on b.station = m.station and b.slot = m.slot and b.product = u.product and b.revision = u.revision
  ${byOperator}
  ${doubt === null ? '' : WINDOW_BITS}
  where (b.slot is not null or not m.is_of_bom) and ${slotTime.test}
  ${doubt === null ? '' : namedDraws}
  union all
  select d.unit, coalesce(i.kind in ('reel', 'lot'), true), ${directTime.certain}, 0, d.positions, d.at, d.event
  from read.direct_draw d
  ${directJoin}join read.item i on i.item = d.item
  ${needsEvent ? 'join log.event e on e.id = d.event' : ''}
  where ${direct.join(' and ')} and ${directTime.test}
)`;
}

// The reasons of the windows that a pass (p) is in, at the slot of a stay (m).
const WINDOW_BITS = `left join lateral (
    select bit_or(w.bits) as bits from doubt_window w
    where w.station = m.station and w.slot = m.slot and p.low <= w.high and p.high >= w.low
  ) w on true`;

/** Why a draw is not certain, with the windows that it is in beside what its own times leave open. */
function doubtfulBits({ inSlot, slotBits }: { inSlot: string; slotBits: string }): string {
  const own = `case when (${slotBits}) = 0 and not (${inSlot}) then ${bitOf('clock')} else ${slotBits} end`;
  return `case when w.bits is null then ${slotBits} else w.bits | ${own} end`;
}

/** The windows of doubt as a table; an item that one names may have been in its slot then. */
function doubtWindows(rows: string): string {
  return `
doubt_window as materialized (
  select * from jsonb_to_recordset(${rows})
    as w(station text, slot text, low timestamptz, high timestamptz, items text[], bits integer)
),`;
}

function toRow({ station, slot, lowUs, highUs, items, reason }: DoubtWindow) {
  const high = highUs === Number.POSITIVE_INFINITY ? 'infinity' : formatInstant(highUs);
  return { station, slot, low: formatInstant(lowUs), high, items, bits: bitOf(reason) };
}

/** Work at a station, by a person, in a time: what was touched there and then. */
function processedDraws(question: WhereUsedQuestion, param: Param): string {
  const { station, operator } = question;
  const time = timeTest(question, param, 'e.at', 'make_interval(secs => e.uncertainty_ms / 1000.0)');
  const tests = [time.test];
  if (station !== undefined) tests.push(`e.station = ${param(station, 'text')}`);
  if (operator !== undefined) tests.push(`e.operator = ${param(operator, 'text')}`);
  return `
base(unit, is_material, is_certain, doubt, positions, held_at, held_event) as (
  select e.unit, false, ${time.certain}, 0, '{}'::text[] collate "C", e.at, e.id
  from log.event e
  where e.type = 'unit.processed' and ${tests.join(' and ')}
    and not exists (select from read.voided v where v.event = e.id)
)`;
}

/** Tests on a time with its doubt: in while it cannot be excluded, certain while it cannot be otherwise. */
function timeTest(
  { from, to }: WhereUsedQuestion,
  param: Param,
  at: string,
  doubt: string,
): { test: string; certain: string } {
  const tests: string[] = [];
  const certain: string[] = [];
  if (from !== undefined) {
    const value = param(formatInstant(instantOf(from)), 'timestamptz');
    tests.push(`${at} + (${doubt}) >= ${value}`);
    certain.push(`${at} - (${doubt}) >= ${value}`);
  }
  if (to !== undefined) {
    const value = param(formatInstant(instantOf(to)), 'timestamptz');
    tests.push(`${at} - (${doubt}) <= ${value}`);
    certain.push(`${at} + (${doubt}) <= ${value}`);
  }
  return { test: tests.join(' and ') || 'true', certain: certain.join(' and ') || 'true' };
}

function answerFilter({ place, relation, certainty }: WhereUsedQuestion, param: Param): string {
  const tests: string[] = [];
  if (place !== undefined)
    tests.push(
      `case when w.place = 'container' and c.shipment is not null then 'shipped' else w.place end = any(${param(place, 'text[]')})`,
    );
  if (relation !== undefined) {
    const ranks = relation.map((name) => ({ contains: 3, formerly: 2, touched: 1 })[name]);
    tests.push(`b.rank = any(${param(ranks, 'integer[]')})`);
  }
  if (certainty?.length === 1) tests.push(`b.is_certain = ${param(certainty[0] === 'certain', 'boolean')}`);
  return tests.length === 0 ? '' : `where ${tests.join(' and ')}`;
}
