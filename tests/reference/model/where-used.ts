import type {
  Certainty,
  Relation,
  WhereUsedAnswer,
  WhereUsedQuery,
  WhereUsedUnit,
} from '@/tests/reference/model/answer-types';
import { type Draw, drawsOf, heldPeriod, relationOf } from '@/tests/reference/model/draws';
import { type History, liveOf, productOf, type Recorded } from '@/tests/reference/model/history';
import { type Join, joinsOf, pathsOutward } from '@/tests/reference/model/joins';
import { compareCodes, compareLists, instantUs, type Period } from '@/tests/reference/model/order';
import { type Picked, placeOf } from '@/tests/reference/model/places';

/** What puts a unit into the answer before outer units are added. */
type Finding = { unit: string; relation: Relation; certainty: Certainty; held: Period };

/** One way by which a unit is in the answer. */
type Way = { unit: string; relation: Relation; certainty: Certainty; through: string[] };

const RELATIONS: readonly Relation[] = ['contains', 'formerly', 'touched'];
const CERTAINTIES: readonly Certainty[] = ['certain', 'possible'];

/** Answers `GET /api/trace/where-used` whole, without paging. */
export function whereUsed(
  history: History,
  draws: readonly Draw[],
  query: WhereUsedQuery,
  picked: Picked,
): WhereUsedAnswer {
  const joins = joinsOf(history);
  const asksForThing = query.item !== undefined || query.lot !== undefined || query.part !== undefined;
  const findings = asksForThing ? drawFindings(history, draws, query) : passFindings(history, query);
  const ways = findings.flatMap((finding) => waysOf(joins, finding));
  const units = [...new Set(ways.map(({ unit }) => unit))].sort(compareCodes).map((unit) =>
    rowOf(
      history,
      unit,
      ways.filter((way) => way.unit === unit),
      picked,
    ),
  );
  return counted(units.filter((row) => passesFilters(row, query)));
}

/** Every draw of every unit, which all where-used questions of one history share. */
export function allDraws(history: History): Draw[] {
  const units = new Set<string>();
  for (const type of ['unit.started', 'unit.processed', 'part.installed'] as const) {
    for (const { event } of liveOf(history, type)) units.add(event.body.unit);
  }
  return [...units].flatMap((unit) => drawsOf(history, unit));
}

function drawFindings(history: History, draws: readonly Draw[], query: WhereUsedQuery): Finding[] {
  const findings: Finding[] = [];
  for (const draw of draws) {
    if (query.item !== undefined && draw.item !== query.item) continue;
    if (query.lot !== undefined && draw.lot !== query.lot && draw.boardLot !== query.lot) continue;
    if (query.part !== undefined && draw.part !== query.part) continue;
    if (query.station !== undefined && draw.station !== query.station) continue;
    const met = conditionsOnEvent(draw.source, query);
    if (met === null) continue;
    const certainty = draw.certainty === 'certain' ? met : 'possible';
    const relation = relationOf(history, draw);
    findings.push({ unit: draw.unit, relation, certainty, held: heldPeriod(history, draw) });
  }
  return findings;
}

function passFindings(history: History, query: WhereUsedQuery): Finding[] {
  const findings: Finding[] = [];
  for (const pass of liveOf(history, 'unit.processed')) {
    if (query.station !== undefined && pass.event.station !== query.station) continue;
    const certainty = conditionsOnEvent(pass, query);
    if (certainty === null) continue;
    const held = { from: pass.key, to: null };
    findings.push({ unit: pass.event.body.unit, relation: 'touched', certainty, held });
  }
  return findings;
}

/** Whether the event's operator and time meet the conditions, and how surely; null when they do not. */
function conditionsOnEvent({ event, key, doubtUs }: Recorded, query: WhereUsedQuery): Certainty | null {
  if (query.operator !== undefined && event.operator !== query.operator) return null;
  const from = query.from === undefined ? -Infinity : instantUs(query.from);
  const to = query.to === undefined ? Infinity : instantUs(query.to);
  const earliest = key.us - doubtUs;
  const latest = key.us + doubtUs;
  if (latest < from || earliest > to) return null;
  return earliest >= from && latest <= to ? 'certain' : 'possible';
}

function waysOf(joins: readonly Join[], finding: Finding): Way[] {
  const { unit, relation, certainty, held } = finding;
  const outer = pathsOutward(joins, unit, held).map((path): Way => {
    const outerRelation = relation === 'touched' ? 'touched' : path.open ? 'contains' : 'formerly';
    return { unit: path.unit, relation: outerRelation, certainty, through: path.through };
  });
  return [{ unit, relation, certainty, through: [] }, ...outer];
}

function rowOf(history: History, unit: string, ways: readonly Way[], picked: Picked): WhereUsedUnit {
  const relation = RELATIONS.find((strongest) => ways.some((way) => way.relation === strongest));
  const certainty = CERTAINTIES.find((strongest) => ways.some((way) => way.certainty === strongest));
  const [best] = [...ways].sort(compareWays);
  if (relation === undefined || certainty === undefined || best === undefined) {
    throw new Error(`no way leads to ${unit}`);
  }
  const place = placeOf(history, unit, picked);
  return { unit, ...productOf(history, unit), certainty, relation, place, through: best.through };
}

function compareWays(left: Way, right: Way): number {
  return (
    RELATIONS.indexOf(left.relation) - RELATIONS.indexOf(right.relation) ||
    CERTAINTIES.indexOf(left.certainty) - CERTAINTIES.indexOf(right.certainty) ||
    left.through.length - right.through.length ||
    compareLists(left.through, right.through, compareCodes)
  );
}

function passesFilters(row: WhereUsedUnit, query: WhereUsedQuery): boolean {
  if (query.place !== undefined && !(row.place !== null && query.place.includes(row.place.kind)))
    return false;
  if (query.relation !== undefined && !query.relation.includes(row.relation)) return false;
  return query.certainty === undefined || query.certainty.includes(row.certainty);
}

function counted(units: WhereUsedUnit[]): WhereUsedAnswer {
  const byPlace = { station: 0, stock: 0, container: 0, shipped: 0, returned: 0, scrapped: 0 };
  const counts = { units: 0, certain: 0, possible: 0, contains: 0, formerly: 0, touched: 0, byPlace };
  for (const { certainty, relation, place } of units) {
    counts.units += 1;
    counts[certainty] += 1;
    counts[relation] += 1;
    if (place !== null) byPlace[place.kind] += 1;
  }
  return { counts, units };
}
