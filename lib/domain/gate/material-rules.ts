import type { ItemKind } from '@/lib/domain/events/vocabulary';
import type { Known } from '@/lib/domain/gate/known';
import type { Refusal } from '@/lib/domain/gate/refusals';

/** Kinds that a unit consumes; every other kind touches the unit and stays. */
export const MATERIAL_KINDS: readonly ItemKind[] = ['reel', 'lot'];

/** Whether a kind is consumed. */
export function isMaterial(kind: ItemKind): boolean {
  return MATERIAL_KINDS.includes(kind);
}

/** An item must have been received. */
export function unknownItem(known: Known, item: string): Refusal[] {
  return known.item(item) === null ? [{ code: 'unknown_item', item }] : [];
}

/** A retired item is not used any more. */
export function retired(known: Known, item: string): Refusal[] {
  return known.item(item)?.isRetired ? [{ code: 'retired', item }] : [];
}

/** Neither an item on hold nor one of a lot on hold is used. */
export function itemOnHold(known: Known, item: string): Refusal[] {
  const lot = known.item(item)?.lot ?? null;
  const holds = [...known.holdsOn('item', item), ...(lot === null ? [] : known.holdsOn('lot', lot))];
  return holds.map(({ hold, kind, id, reason }) => ({ code: 'on_hold', kind, id, item, hold, reason }));
}

/** What a unit would draw from at a station: slots, each with the parts allowed there (null: any). */
function drawingSlots(known: Known, unit: string, station: string): Map<string, string[] | null> {
  const { plant } = known;
  const state = known.unit(unit);
  const slots = new Map<string, string[] | null>();
  for (const slot of plant.station(station)?.slots ?? [])
    if (!isMaterial(slot.holds)) slots.set(slot.name, null);
  for (const [slot, item] of known.slotContents(station)) {
    const kind = plant.slotHolds(station, slot) ?? known.item(item)?.kind ?? 'reel';
    if (!isMaterial(kind)) slots.set(slot, null);
  }
  const product = state === null ? null : plant.product(state.product, state.revision);
  for (const supply of plant.suppliesAt(station, product)) slots.set(supply.slot, supply.parts);
  return slots;
}

/** Every slot that a unit draws from is filled, with the right part, and with nothing that is held. */
export function slotFaults(known: Known, unit: string, station: string): Refusal[] {
  const contents = known.slotContents(station);
  const grey = known.greyContents(station);
  const refusals: Refusal[] = [];
  for (const [slot, parts] of drawingSlots(known, unit, station)) {
    const item = contents.get(slot);
    if (item === undefined) {
      refusals.push({ code: 'slot_empty', station, slot, ...(parts && { expected: parts }) });
      continue;
    }
    refusals.push(...unknownItem(known, item), ...itemOnHold(known, item));
    const ending = grey.get(slot);
    if (ending !== undefined) refusals.push(...itemOnHold(known, ending));
    const part = known.item(item)?.part ?? null;
    if (parts !== null && known.item(item) !== null && (part === null || !parts.includes(part)))
      refusals.push({ code: 'wrong_part', station, slot, item, part, expected: parts });
  }
  return refusals;
}

/** What is fitted by hand is a part that the BOM of the unit allows at its position, where it says anything of it. */
export function fittedPartFaults(
  known: Known,
  { unit, position, item }: { unit: string; position: string; item: string },
): Refusal[] {
  const state = known.unit(unit);
  const facts = known.item(item);
  const { bom = [] } = (state && known.plant.product(state.product, state.revision)) ?? {};
  const parts = bom.flatMap((line) =>
    line.part !== undefined && line.positions?.includes(position) ? [line.part] : [],
  );
  if (facts === null || parts.length === 0) return [];
  if (facts.part !== null && parts.includes(facts.part)) return [];
  const expected = [...new Set(parts)];
  return [{ code: 'wrong_part', unit, position, item, part: facts.part, expected }];
}

/** An item goes only into a slot that exists, holds its kind, and is meant for its part. */
export function mountFaults(known: Known, mount: { item: string; station: string; slot: string }): Refusal[] {
  const { item, station, slot } = mount;
  const facts = known.item(item);
  const holds = known.plant.slotHolds(station, slot);
  const refusals = [...unknownItem(known, item), ...retired(known, item), ...itemOnHold(known, item)];
  if (known.plant.station(station) !== null && holds === null)
    refusals.push({ code: 'unknown_slot', station, slot });
  if (facts === null || holds === null) return refusals;
  if (facts.kind !== holds)
    refusals.push({ code: 'wrong_kind', station, slot, item, kind: facts.kind, expected: holds });
  const parts = known.plant.partsAllowedIn(station, slot);
  if (parts.size > 0 && (facts.part === null || !parts.has(facts.part)))
    refusals.push({ code: 'wrong_part', station, slot, item, part: facts.part, expected: [...parts] });
  return refusals;
}
