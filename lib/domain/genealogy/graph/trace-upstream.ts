import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { carriesTouch, isTouch, salvagesInto, suppliesOf } from '@/lib/domain/genealogy/graph/carried';
import type { GraphDraft } from '@/lib/domain/genealogy/graph/graph-draft';
import {
  cutOf,
  heldDuring,
  isOpen,
  lastCleared,
  type Salvage,
  salvagesIn,
  shared,
  type UnitFacts,
  type Window,
  windowOf,
} from '@/lib/domain/genealogy/graph/unit-facts';
import type { UnitDraw } from '@/lib/domain/genealogy/unit-draws';
import { compareKeys } from '@/lib/domain/time';

/** Longest chain of units that is followed. */
const DEPTH_MAX = 64;

/** What is done to a unit, as against what becomes of it afterwards. */
const WORK: ReadonlySet<string> = new Set([
  'unit.started',
  'unit.processed',
  'unit.signed',
  'unit.joined',
  'part.removed',
  'part.installed',
]);

/** A unit as one stop on the way back; `path` are the units passed, so that no way goes round in a circle. */
type Stop = { id: string; unit: string; facts: UnitFacts | null; path: readonly string[] };

/**
 * Adds everything that went into a unit while it was part of the one asked for (`during`): what it drew, who worked on
 * it and where, the units that it held then, and the parts that came out of others, each with its own story.
 */
export function traceUpstream(draft: GraphDraft, stop: Stop, during: Window): void {
  const { id, unit, facts, path } = stop;
  if (facts === null || path.length > DEPTH_MAX) return;
  for (const event of facts.events)
    if ('unit' in event.body && event.body.unit === unit && compareKeys(event, during.to) < 0)
      addWork(draft, stop, event);
  for (const draw of facts.draws)
    if (draw.via.length === 0 && shared(heldDuring(facts, unit, draw), during) !== null)
      addDraw(draft, stop, draw);
  for (const salvage of salvagesIn(facts)) {
    const { event, into, position } = salvage;
    if (into !== unit || compareKeys(event, during.to) >= 0) continue;
    const to = lastCleared(facts, { unit, positions: [position], from: event });
    const isHeld = compareKeys(to, during.from) > 0;
    // A tool's touch stays when the part goes: the donor's tools count even where its part was gone by then.
    addDonor(draft, { stop, salvage, isHeld, isStillThere: isOpen({ from: event, to }) });
  }
  for (const stay of facts.children) {
    const inside = shared(windowOf(stay), during);
    if (inside === null || path.includes(stay.unit)) continue;
    const inner = draft.unit('upstream', stay.unit);
    const relation = stay.until === null ? 'contains' : 'formerly';
    draft.edge({ from: inner.id, to: id, link: 'inside', relation, positions: [stay.position] });
    traceUpstream(draft, { ...inner, unit: stay.unit, path: [...path, stay.unit] }, inside);
  }
}

function addWork(draft: GraphDraft, { id, unit }: Stop, event: LoggedEvent): void {
  if (!WORK.has(event.type)) return;
  const { station = null, operator, at } = event;
  if (station === null && operator === undefined) return;
  const failed = event.type === 'unit.processed' && event.body.result === 'fail' ? event.id : null;
  const work = draft.work({ unit, station, at, failed });
  draft.edge({ from: work, to: id, link: 'work' });
  if (operator !== undefined) draft.edge({ from: draft.person(operator), to: work, link: 'person' });
}

function addDraw(draft: GraphDraft, { id, unit }: Stop, draw: UnitDraw): void {
  const { item, kind, part, lot, positions, station, slot, at, relation, certainty } = draw;
  const work = draft.work({ unit, station, at, failed: null });
  draft.edge({ from: work, to: id, link: 'work' });
  draft.edge({
    from: draft.item({ code: item, itemKind: kind, part, lot }),
    to: work,
    link: 'draw',
    relation,
    certainty,
    positions,
    slots: slot === null ? [] : [slot],
  });
}

/** Adds the unit that a part came out of, with what supplied that position there and nothing else of it. */
function addDonor(
  draft: GraphDraft,
  way: { stop: Stop; salvage: Salvage; isHeld: boolean; isStillThere: boolean },
): void {
  const { stop, salvage, isHeld, isStillThere } = way;
  const { fromUnit, fromPosition, position } = salvage;
  if (stop.path.length > DEPTH_MAX || (!isHeld && !carriesTouch(draft.ledger, salvage))) return;
  const donor = draft.unit('upstream', fromUnit);
  const relation = isStillThere ? 'contains' : 'formerly';
  draft.edge({ from: donor.id, to: stop.id, link: 'salvage', relation, positions: [position] });
  const { facts } = donor;
  if (facts === null) return;
  const next = { ...donor, unit: fromUnit, path: [...stop.path, fromUnit] };
  const before = cutOf(facts, salvage);
  for (const draw of suppliesOf(facts, { position: fromPosition, before })) {
    if (!isHeld && !isTouch(draw)) continue;
    addDraw(draft, next, draw);
    const event = facts.events.find((each) => each.id === draw.by);
    if (event !== undefined) addWork(draft, next, event);
  }
  for (const earlier of salvagesInto(facts, { unit: fromUnit, position: fromPosition, before }))
    addDonor(draft, { stop: next, salvage: earlier, isHeld, isStillThere: false });
}
