import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import type { ItemKind } from '@/lib/domain/events/vocabulary';
import type { ItemFacts } from '@/lib/domain/gate/known';
import { isMaterial } from '@/lib/domain/gate/material-rules';
import type { Certainty, Doubt, Relation } from '@/lib/domain/genealogy/answer';
import { directDrawsOf } from '@/lib/domain/genealogy/draw-rows';
import type { Plant } from '@/lib/domain/plant/plant';
import { compareKeys, type OrderKey } from '@/lib/domain/time';
import { productOf } from '@/lib/domain/units/fold-unit';

/**
 * An item that stood, or may have stood, in a slot while a unit was processed: `because` says what the record cannot
 * exclude, and is empty where it proves it.
 */
export type Overlap = { event: string; slot: string; item: string; because: Doubt[] };

/** What is known of a unit and its donors for an as-built record. */
export type Ledger = {
  plant: Plant;
  /** A unit's events that count, in order. */
  history(unit: string): readonly LoggedEvent[];
  /** What stood in the slots during a `unit.processed`, by its id. */
  overlaps(event: string): readonly Overlap[];
  item(item: string): Pick<ItemFacts, 'kind' | 'part' | 'lot'> | null;
};

/** One draw of a unit. `held` is since when the unit has it; `via` names the salvages that brought it, the last last. */
export type UnitDraw = {
  item: string;
  kind: ItemKind | null;
  part: string | null;
  lot: string | null;
  positions: string[];
  station: string | null;
  slot: string | null;
  at: string;
  certainty: Certainty;
  /** Why it is only possible. */
  because?: Doubt[];
  relation: Relation;
  by: string;
  via: string[];
};

type Held = Omit<UnitDraw, 'relation'> & { held: OrderKey };

/** Everything that a unit drew, in the order in which it came to hold it. */
export function drawsOf(ledger: Ledger, unit: string): UnitDraw[] {
  const removals = ledger.history(unit).flatMap((event) => (event.type === 'part.removed' ? [event] : []));
  return heldBy(ledger, unit, new Map()).map(({ held, ...draw }) => {
    const isTool = draw.kind !== null && !isMaterial(draw.kind);
    const stays = draw.positions.some(
      (position) =>
        !removals.some((event) => event.body.position === position && compareKeys(event, held) > 0),
    );
    const relation = isTool ? 'touched' : draw.positions.length === 0 || stays ? 'contains' : 'formerly';
    return { ...draw, relation };
  });
}

function heldBy(ledger: Ledger, unit: string, carriedBy: Map<string, Held[]>): Held[] {
  const history = ledger.history(unit);
  const { product, revision } = productOf(history);
  const entry = ledger.plant.product(product, revision);
  return history.flatMap((event) => [
    ...slotDraws(ledger, event, entry),
    ...namedDraws(ledger, event),
    ...carriedDraws(ledger, event, carriedBy),
  ]);
}

function slotDraws(ledger: Ledger, event: LoggedEvent, product: ReturnType<Plant['product']>): Held[] {
  if (event.type !== 'unit.processed') return [];
  const { plant } = ledger;
  const supplies = plant.suppliesAt(event.station, product);
  return ledger.overlaps(event.id).flatMap(({ slot, item, because }) => {
    const facts = ledger.item(item);
    const kind = facts?.kind ?? plant.slotHolds(event.station, slot);
    const supply = supplies.find((row) => row.slot === slot);
    const holds = plant.slotHolds(event.station, slot) ?? facts?.kind ?? 'reel';
    if (supply === undefined && isMaterial(holds)) return [];
    return [
      {
        item,
        kind: kind ?? 'reel',
        part: facts?.part ?? null,
        lot: facts?.lot ?? null,
        positions: supply?.positions ?? [],
        station: event.station,
        slot,
        at: event.at,
        ...(because.length === 0 ? { certainty: 'certain' } : { certainty: 'possible', because }),
        by: event.id,
        via: [],
        held: event,
      },
    ];
  });
}

function namedDraws(ledger: Ledger, event: LoggedEvent): Held[] {
  return directDrawsOf(event).map(({ source, item, positions }) => {
    const facts = ledger.item(item);
    const isBoard = source === 'board_lot';
    return {
      item,
      kind: facts?.kind ?? (isBoard ? 'lot' : null),
      part: facts?.part ?? null,
      lot: facts?.lot ?? (isBoard ? item : null),
      positions,
      station: event.station ?? null,
      slot: null,
      at: event.at,
      certainty: 'certain',
      by: event.id,
      via: [],
      held: event,
    };
  });
}

/** A salvage carries what supplied the donor's position until its last removal before the installation. */
function carriedDraws(ledger: Ledger, event: LoggedEvent, carriedBy: Map<string, Held[]>): Held[] {
  if (event.type !== 'part.installed') return [];
  const { fromUnit, fromPosition, position } = event.body;
  if (fromUnit === undefined || fromPosition === undefined) return [];
  const known = carriedBy.get(event.id);
  if (known !== undefined) return known;
  const donor = ledger.history(fromUnit);
  const { product, revision } = productOf(donor);
  const entry = ledger.plant.product(product, revision);
  const removal = donor.findLast(
    (each) =>
      each.type === 'part.removed' && each.body.position === fromPosition && compareKeys(each, event) < 0,
  );
  const cut = removal ?? event;
  // Each donor event lies before the cut, so the recursion strictly goes back in order and ends.
  const draws = donor
    .filter((each) => compareKeys(each, cut) < 0)
    .flatMap((each) => [
      ...slotDraws(ledger, each, entry),
      ...namedDraws(ledger, each),
      ...carriedDraws(ledger, each, carriedBy),
    ])
    .filter((draw) => draw.positions.includes(fromPosition))
    .map((draw) => ({ ...draw, positions: [position], via: [...draw.via, event.id], held: event }));
  carriedBy.set(event.id, draws);
  return draws;
}
