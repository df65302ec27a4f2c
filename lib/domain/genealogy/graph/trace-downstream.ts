import { carriesTouch } from '@/lib/domain/genealogy/graph/carried';
import type { GraphDraft } from '@/lib/domain/genealogy/graph/graph-draft';
import {
  ALWAYS,
  cutOf,
  isOpen,
  lastCleared,
  salvagesIn,
  shared,
  type UnitFacts,
  type Window,
  windowOf,
} from '@/lib/domain/genealogy/graph/unit-facts';
import { compareKeys } from '@/lib/domain/time';

/** Longest chain of units that is followed. */
const DEPTH_MAX = 64;

/** A part of the unit that was asked for, where it went; `leavesTouch` when a tool had touched it there. */
type Part = { position: string; leavesTouch: boolean };

/** An outer unit holds the one that is asked for, but none of its own parts is that one's. */
const NO_PART: Part = { position: '', leavesTouch: false };

type Stop = { id: string; unit: string; facts: UnitFacts | null; path: readonly string[] };

/**
 * Adds everything that a unit, or the part of it that is followed, went into: the units around it at the time, the
 * units that its parts were put into, and the containers and the shipment that it is in now. `part` is the position of
 * the part that is followed, null for the whole unit.
 */
export function traceDownstream(
  draft: GraphDraft,
  stop: Stop,
  { during, part }: { during: Window; part: Part | null },
): void {
  const { id, unit, facts, path } = stop;
  if (facts === null || path.length > DEPTH_MAX) return;
  for (const stay of facts.parents) {
    const around = shared(windowOf(stay), during);
    if (around === null || path.includes(stay.unit)) continue;
    const outer = draft.unit('downstream', stay.unit);
    const relation = stay.until === null ? 'contains' : 'formerly';
    draft.edge({ from: id, to: outer.id, link: 'inside', relation, positions: [stay.position] });
    const next = { ...outer, unit: stay.unit, path: [...path, stay.unit] };
    traceDownstream(draft, next, { during: around, part: NO_PART });
  }
  if (part !== NO_PART)
    for (const salvage of salvagesIn(facts)) {
      const { event, fromUnit, into, fromPosition, position } = salvage;
      const isFollowed =
        fromUnit === unit &&
        (part === null ||
          (part.position === fromPosition && compareKeys(during.from, cutOf(facts, salvage)) < 0));
      if (!isFollowed || path.includes(into)) continue;
      const taker = draft.unit('downstream', into);
      const to =
        taker.facts === null
          ? event
          : lastCleared(taker.facts, { unit: into, positions: [position], from: event });
      const held = { from: event, to };
      const relation = isOpen(held) ? 'contains' : 'formerly';
      draft.edge({ from: id, to: taker.id, link: 'salvage', relation, positions: [position] });
      const next = { ...taker, unit: into, path: [...path, into] };
      // A tool's touch comes with the part and stays where the part went, even when that is taken off again.
      const leavesTouch = part?.leavesTouch ?? carriesTouch(draft.ledger, salvage);
      const stays = { from: event, to: leavesTouch ? ALWAYS.to : to };
      traceDownstream(draft, next, { during: stays, part: { position, leavesTouch } });
    }
  const isOutermost = !facts.parents.some((stay) => stay.until === null);
  if (isOutermost && isOpen(during)) addContainers(draft, id, facts);
}

function addContainers(draft: GraphDraft, unitId: string, { containers, place }: UnitFacts): void {
  let inner = unitId;
  for (const code of containers) {
    const container = draft.container(code);
    draft.edge({ from: inner, to: container, link: 'packed', relation: 'contains' });
    inner = container;
  }
  if (place?.kind !== 'shipped') return;
  draft.edge({ from: inner, to: draft.shipment(place.shipment, place.customer), link: 'shipped' });
}
